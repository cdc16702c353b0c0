using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Analyses.Sweeps;

/// <summary>What becomes of life and failure when one or two inputs are moved over a range.</summary>
/// <param name="Inputs">The inputs, one or two.</param>
/// <param name="DistanceKm">The distance of the failure probabilities, km.</param>
/// <param name="Stated">The scenario as it is stated.</param>
/// <param name="Points">The points; of two inputs every value of the first with every value of the second, and before them each alone.</param>
/// <param name="IsConditional">Whether exact failure probabilities given the damage are averaged, or failures counted.</param>
/// <param name="Run">The run; its evaluations are those of each point.</param>
public sealed record SweepResult(
    ImmutableArray<SweepAxis> Inputs, double DistanceKm, ComparedCase Stated, ImmutableArray<SweepPoint> Points, bool IsConditional,
    RunRecord Run);

/// <summary>One input of a sweep.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Label">Its name in plain words.</param>
/// <param name="Unit">Its unit; empty for a pure number or a category.</param>
/// <param name="Stated">Its value in the base case; NaN for a category.</param>
/// <param name="Values">Its values in the sweep, as they are written.</param>
public sealed record SweepAxis(string Name, string Label, string Unit, double Stated, ImmutableArray<string> Values);

/// <summary>One point of a sweep.</summary>
/// <param name="Values">The value of each input as it is written; null for one that stays as stated.</param>
/// <param name="Place">Where the values stand on an axis; NaN for one that stays as stated.</param>
/// <param name="RelativeLife">Life of the base case over that of the scenario as stated.</param>
/// <param name="RelativeDamage">Damage per km of the base case over that of the scenario as stated.</param>
/// <param name="Case">The failure probability, and its paired change from the scenario as stated.</param>
/// <param name="Together">
/// Of two inputs: the ratio of the failure probabilities over what the two ratios, each alone, would give multiplied; null else.
/// </param>
/// <param name="LifeTogether">The same of the lives of the base case; null for one input.</param>
public sealed record SweepPoint(
    ImmutableArray<string?> Values, ImmutableArray<double> Place, double RelativeLife, double RelativeDamage, ComparedCase Case,
    Interval? Together, double? LifeTogether);
