using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Decisions;

/// <summary>The options of a decision with what they are expected to cost; all costs in the user's own unit.</summary>
public sealed record DecideResult
{
    /// <summary>The decision.</summary>
    public required Decision Decision { get; init; }

    /// <summary>The currency; null where none is stated.</summary>
    public required string? Currency { get; init; }

    /// <summary>The number of vehicles that costs are of.</summary>
    public required long Vehicles { get; init; }

    /// <summary>The distance to which failures count, km; null where the warranty decides.</summary>
    public required double? Km { get; init; }

    /// <summary>The fleet whose warranty decides which failures count; null where a distance does.</summary>
    public required Fleet? Fleet { get; init; }

    /// <summary>The risk study's figure of the scenario as it is, by that distance; null where this stands by itself.</summary>
    public RiskHeadline? Headline { get; init; }

    /// <summary>What the own sample says of the same.</summary>
    public required Interval Own { get; init; }

    /// <summary>What one failure costs on average.</summary>
    public required double MeanFailureCost { get; init; }

    /// <summary>The options in the order stated, the scenario as it is first.</summary>
    public required ImmutableArray<DecidedOption> Options { get; init; }

    /// <summary>The place of the option with the least expected net cost.</summary>
    public required int Best { get; init; }

    /// <summary>The best of the other options.</summary>
    public DecidedOption Next => Options.Where((_, i) => i != Best).MinBy(o => o.NetCost.Estimate)!;

    /// <summary>How much more the next is expected to cost than the best, paired: the way to the break-even price.</summary>
    public Interval Lead => Options[Best] is var best && best.BreakEvenPrice is var (estimate, low, high)
        ? new(Vehicles * (estimate - best.Price), Vehicles * (low - best.Price), Vehicles * (high - best.Price)) : default;

    /// <summary>What knowing all that is unknown would save on average: no measurement is worth more.</summary>
    public required Interval PerfectInformation { get; init; }

    /// <summary>The factors that are unknown, of any option.</summary>
    public required ImmutableArray<Factor> Unknown { get; init; }

    /// <summary>Outer draws of what is unknown.</summary>
    public required int Draws { get; init; }

    /// <summary>Vehicles drawn for each of them.</summary>
    public required int VehiclesOfDraw { get; init; }

    /// <summary>The run behind it; its evaluations are those of each option.</summary>
    public required RunRecord Run { get; init; }
}

/// <summary>One option; intervals are 95 % and of sampling alone, differences paired.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Price">What it costs a vehicle.</param>
/// <param name="Cost">What it costs for all vehicles.</param>
/// <param name="Failed">The failure probability of a vehicle.</param>
/// <param name="FailureCost">What its failures are expected to cost.</param>
/// <param name="NetCost">Both together.</param>
public sealed record DecidedOption(string Name, double Price, double Cost, Interval Failed, Interval FailureCost, Interval NetCost)
{
    /// <summary>The net cost less that of the scenario as it is; null for that itself.</summary>
    public required Interval? Difference { get; init; }

    /// <summary>The probability, given what is unknown, that it has the least expected net cost.</summary>
    public required Interval ProbabilityBest { get; init; }

    /// <summary>The best of the other options, against which the break-even price is.</summary>
    public required string Against { get; init; }

    /// <summary>The price a vehicle at which its expected net cost is that of the best of the others: below it, it is better.</summary>
    public required Interval BreakEvenPrice { get; init; }
}
