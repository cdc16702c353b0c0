using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Inspections;

/// <summary>What looking for the crack brings; all intervals are 95 % and of sampling alone.</summary>
public sealed record InspectResult
{
    /// <summary>The ways of looking, in file order.</summary>
    public required ImmutableArray<InspectionMethod> Methods { get; init; }

    /// <summary>What plans are judged by, with the failure cost of the decision where no other is stated.</summary>
    public required InspectionTerms Terms { get; init; }

    /// <summary>The currency; null where none is stated.</summary>
    public required string? Currency { get; init; }

    /// <summary>What was seen of the vehicle, which is whole: all figures are given that; null where nothing was.</summary>
    public required Evidence? Seen { get; init; }

    /// <summary>Where the way begins: the distance that the vehicle is known to have reached, km.</summary>
    public required double FromKm { get; init; }

    /// <summary>The distance that plans go to, km.</summary>
    public required double RequiredKm { get; init; }

    /// <summary>The depth of the crack of nominal values when new, and its last, mm.</summary>
    public required (double InitialMm, double WallMm) Depth { get; init; }

    /// <summary>The failure probability by distance without a look.</summary>
    public required ImmutableArray<InspectedDistance> WithoutPlan { get; init; }

    /// <summary>The same with the looks told of; the same figures where there are none.</summary>
    public required ImmutableArray<InspectedDistance> WithPlan { get; init; }

    /// <summary>The looks told of.</summary>
    public required ImmutableArray<InspectedLook> Looks { get; init; }

    /// <summary>Whether these are stated in the scenario, and not planned.</summary>
    public required bool IsStated { get; init; }

    /// <summary>The greatest failure probability from one look told of to the next, beginning and end included.</summary>
    public required Interval Greatest { get; init; }

    /// <summary>The mean cost of a vehicle with the looks told of; null where nothing has a cost.</summary>
    public required Interval? Cost { get; init; }

    /// <summary>The mean cost of a vehicle without a look; null where failures have none.</summary>
    public required Interval? CostWithout { get; init; }

    /// <summary>The plans made, method by method.</summary>
    public required ImmutableArray<PlannedLooks> Plans { get; init; }

    /// <summary>The plan to begin with: the cheapest where costs are stated, else that of the fewest looks; null where there is
    /// none.</summary>
    public required PlannedLooks? Plan { get; init; }

    /// <summary>Whether the scatter of life is integrated over exactly, and not drawn.</summary>
    public required bool IsExact { get; init; }

    /// <summary>The run behind it.</summary>
    public required RunRecord Run { get; init; }
}

/// <summary>The failure probability by a distance.</summary>
/// <param name="Km">The distance, km.</param>
/// <param name="Failed">The probability.</param>
public sealed record InspectedDistance(double Km, Interval Failed);

/// <summary>A look at a distance; probabilities of any vehicle as it is new, but for the last.</summary>
/// <param name="Km">The distance, km.</param>
/// <param name="Method">The method's name.</param>
/// <param name="Found">That it comes whole to the look, which finds the crack.</param>
/// <param name="Missed">That it comes whole to the look with a crack of the method's a50 or deeper, and it is not found.</param>
/// <param name="FalseCalls">That the look calls a crack where it has found none.</param>
/// <param name="FailureBeforeNext">Of a vehicle whole at the look, which like all before has found nothing: that it fails before the next
/// look or the end.</param>
public sealed record InspectedLook(
    double Km, string Method, Interval Found, Interval Missed, Interval FalseCalls, Interval FailureBeforeNext);

/// <summary>What a plan seeks.</summary>
public enum PlanAim
{
    /// <summary>The fewest looks that keep the target.</summary>
    Fewest,

    /// <summary>The least expected cost.</summary>
    Cheapest,
}

/// <summary>A regular plan of one method.</summary>
/// <param name="Method">The method's name.</param>
/// <param name="Aim">What it seeks.</param>
/// <param name="Looks">The number of looks; 0 where none is needed.</param>
/// <param name="FirstKm">The distance of the first, km; null where there is none.</param>
/// <param name="EveryKm">The distance between two, km; null where there is none.</param>
/// <param name="Failed">The failure probability by the required distance.</param>
/// <param name="Greatest">The greatest failure probability from one look to the next, beginning and end included.</param>
/// <param name="Cost">The mean cost of a vehicle; null where nothing has a cost.</param>
/// <param name="Saves">What it costs less than no look, by the same vehicles; null where failures have no cost.</param>
public sealed record PlannedLooks(
    string Method, PlanAim Aim, int Looks, double? FirstKm, double? EveryKm, Interval Failed, Interval Greatest, Interval? Cost,
    Interval? Saves);
