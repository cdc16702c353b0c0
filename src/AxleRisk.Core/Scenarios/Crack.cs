using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>How deep the crack is on the way to the end of the S-N life, which is the life to a crack through the wall.</summary>
/// <param name="Own">The user's own curve; null for the law of Paris and Erdogan, whose initial depth and exponent are inputs.</param>
public sealed record Crack(CrackCurve? Own = null);

/// <summary>Depth of the crack over the fraction of life used: points that straight lines join.</summary>
/// <param name="Fractions">The fractions, rising from 0 to 1.</param>
/// <param name="DepthsMm">The depths, mm, as many, above 0 and rising.</param>
/// <param name="Source">Where it comes from, in the author's words; only printed.</param>
public sealed record CrackCurve(ImmutableArray<double> Fractions, ImmutableArray<double> DepthsMm, string Source);

/// <summary>A way of looking for the crack.</summary>
/// <param name="Name">Its name, unique.</param>
/// <param name="Detection">How likely it finds a crack of some depth.</param>
/// <param name="FalseCalls">The probability that it calls where it has found nothing.</param>
/// <param name="Cost">What one look costs.</param>
/// <param name="AtKm">The distances of its looks, km, rising; empty where they are to be planned.</param>
public sealed record InspectionMethod(
    string Name, DetectionCurve Detection, double FalseCalls, double Cost, ImmutableArray<double> AtKm);

/// <summary>What an inspection plan is judged by.</summary>
public sealed record InspectionTerms
{
    /// <summary>Nothing stated.</summary>
    public static InspectionTerms None { get; } = new();

    /// <summary>The failure probability from one look to the next that must not be passed; null where none is stated.</summary>
    public double? Target { get; init; }

    /// <summary>What the repair of a found crack costs.</summary>
    public double RepairCost { get; init; }

    /// <summary>What a false call costs.</summary>
    public double FalseCallCost { get; init; }

    /// <summary>What a failure costs; null where it is not stated.</summary>
    public double? FailureCost { get; init; }

    /// <summary>The life of a repaired detail over that of a new one: a factor on what it can use up.</summary>
    public double RepairedLife { get; init; } = 1;
}
