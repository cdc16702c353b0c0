using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>What is asked of a risk study besides its settings.</summary>
public sealed record RiskQuestion
{
    /// <summary>How to estimate the probabilities.</summary>
    public RiskMethod Method { get; init; } = RiskMethod.Auto;

    /// <summary>The distances of the table, km; multiples of the required distance where empty.</summary>
    public ImmutableArray<double> DistancesKm { get; init; } = [];

    /// <summary>Further distances, km, for a picture: answered by the sampled part alone.</summary>
    public ImmutableArray<double> PictureKm { get; init; } = [];

    /// <summary>Stop when the failure probability at the required distance has this coefficient of variation; 0 never.</summary>
    public double UntilCov { get; init; }

    /// <summary>Whether subset simulation checks the rare-event answers.</summary>
    public bool CrossCheck { get; init; }

    /// <summary>The part of the study to run.</summary>
    public StudyPart Part { get; init; } = StudyPart.Whole;

    /// <summary>Where to go on from; null to begin.</summary>
    public RiskState? From { get; init; }

    /// <summary>
    /// Told the state after every round, a few seconds of work at most or as <see cref="IsCheckpointDue"/> says, and after the last.
    /// </summary>
    public Action<RiskState>? Checkpoint { get; init; }

    /// <summary>
    /// Asked after every block, on any thread: whether the state is asked for now, which costs something. Null for rounds that end at the
    /// same evaluations on every machine.
    /// </summary>
    public Func<bool>? IsCheckpointDue { get; init; }

    /// <summary>Whether only the failure probabilities are wanted: then the depths of the crack are left out.</summary>
    internal bool IsOfProbabilities { get; init; }
}
