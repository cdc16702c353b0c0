namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>What decides the digits of a rare-event study besides its scenario and distance.</summary>
/// <param name="Seed">The seed.</param>
public sealed record RareEventSettings(ulong Seed)
{
    /// <summary>The coefficient of variation of the probability at which to stop, above 0.</summary>
    public double TargetCov { get; init; } = 0.05;

    /// <summary>
    /// Evaluations of the damage model at most, at least 1; the search for design points and the first round of every
    /// state of the discrete factors are done in any case, and the cross-check comes on top.
    /// </summary>
    public long MaxEvaluations { get; init; } = 100_000;

    /// <summary>Whether subset simulation checks the answer.</summary>
    public bool CrossCheck { get; init; }

    /// <exception cref="ArgumentException">A setting is outside its range.</exception>
    internal void Validate()
    {
        if (!(TargetCov > 0))
        {
            throw new ArgumentException("the coefficient of variation to reach must be above 0", nameof(TargetCov));
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(MaxEvaluations, 1);
    }
}
