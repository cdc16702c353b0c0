using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Confirmation;

/// <summary>What is simulated, and how much of it.</summary>
public sealed record ConfirmationQuestion
{
    /// <summary>Sampled points besides the base case, 0 or above.</summary>
    public int Points { get; init; } = 4;

    /// <summary>The stretch of the vehicle's history that the model is of, from 1; only told. Null without a history.</summary>
    public int? Stretch { get; init; }

    /// <summary>Length of each of the sixteen records, km; rounded up to whole periods of 64 s.</summary>
    public double KmPerRecord { get; init; } = 5;

    /// <summary>Whether the wheel leaves the ground where the tyre force falls to nothing.</summary>
    public bool LiftOff { get; init; } = true;

    /// <summary>Compression from the static position to the bump stop, mm; infinite for no stop.</summary>
    public double BumpClearanceMm { get; init; } = double.PositiveInfinity;

    /// <summary>Rate of the bump stop beside the spring's, N/mm.</summary>
    public double BumpStopNPerMm { get; init; } = 300;

    /// <summary>Damper rate in compression over the stated rate.</summary>
    public double BumpDamping { get; init; } = 1;

    /// <summary>Damper rate in extension over the stated rate.</summary>
    public double ReboundDamping { get; init; } = 1;

    /// <summary>The seed.</summary>
    public ulong Seed { get; init; } = StudySettings.DefaultSeed;
}
