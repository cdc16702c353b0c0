using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Measurements;

/// <summary>What knowing more is worth: of the decision where there is one, else in the width of the failure probability's band.</summary>
public sealed record MeasureResult
{
    /// <summary>Whether worth is saved cost of a decision; if not, the share by which the band is expected to narrow.</summary>
    public required bool OfDecision { get; init; }

    /// <summary>The currency; null where none is stated.</summary>
    public required string? Currency { get; init; }

    /// <summary>The number of vehicles that costs are of.</summary>
    public required long Vehicles { get; init; }

    /// <summary>The unknown factors, the most worth first.</summary>
    public required ImmutableArray<KnownFactor> Factors { get; init; }

    /// <summary>The measurements, the greatest net worth first.</summary>
    public required ImmutableArray<WorthOfMeasurement> Measurements { get; init; }

    /// <summary>
    /// Unknown factors that are left out, measurements of them with them: they have several columns, or are correlated with others beside
    /// what was learned of them.
    /// </summary>
    public required ImmutableArray<Factor> LeftOut { get; init; }

    /// <summary>The 5 and 95 % points of the failure probability over what is unknown; null with a decision.</summary>
    public required (double Low, double High)? Band { get; init; }

    /// <summary>
    /// What would tell the two leading explanations of the evidence on one vehicle apart; null where the scenario has no evidence or no two
    /// explanations that it leaves open.
    /// </summary>
    public required Apart? Apart { get; init; }

    /// <summary>Rows drawn at each value of a factor.</summary>
    public required long Rows { get; init; }

    /// <summary>The run behind it.</summary>
    public required RunRecord Run { get; init; }
}

/// <summary>An unknown factor.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="Perfect">What knowing it exactly is worth.</param>
public sealed record KnownFactor(Factor Factor, Interval Perfect);

/// <summary>A stated measurement.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="Factor">Its factor.</param>
/// <param name="Value">What it is worth; 0 where the factor varies between vehicles, of which one says nothing of the others.</param>
/// <param name="Net">The same less its cost; null without a decision, for then the two have no unit in common.</param>
public sealed record WorthOfMeasurement(PlannedMeasurement Measurement, Factor Factor, Interval Value, Interval? Net)
{
    /// <summary>Whether its factor is one unknown value for all vehicles.</summary>
    public bool IsOfUnknown => Factor.Knowledge == Knowledge.Unknown;
}
