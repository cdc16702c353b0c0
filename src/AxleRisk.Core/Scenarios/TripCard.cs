using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>What the crew's card of a trip may choose from.</summary>
public sealed record TripCard
{
    /// <summary>The usual step between speeds, km/h.</summary>
    public const double UsualStep = 5;

    /// <summary>The step between the speeds tried, km/h, above 0.</summary>
    public double StepKmPerHour { get; init; } = UsualStep;

    /// <summary>The greatest speed of any leg, km/h; null for the plan of each, rounded down.</summary>
    public double? FastestKmPerHour { get; init; }

    /// <summary>Loads that could be carried on every leg in place of the planned ones, kg.</summary>
    public ImmutableArray<double> PayloadsKg { get; init; } = [];

    /// <summary>Notes for the crew, only printed; may be empty.</summary>
    public string Notes { get; init; } = "";
}
