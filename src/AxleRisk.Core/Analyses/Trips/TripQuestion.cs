namespace AxleRisk.Core.Analyses.Trips;

/// <summary>What is asked of a trip besides the settings of the run.</summary>
public sealed record TripQuestion
{
    /// <summary>The failure probability to be kept, above 0; the trip's own where null.</summary>
    public double? Target { get; init; }

    /// <summary>Whether the crew's card is asked for where the scenario does not.</summary>
    public bool WithCard { get; init; }

    /// <summary>Whether failures are counted even where their probability given the damage is known exactly.</summary>
    public bool IsCounted { get; init; }
}
