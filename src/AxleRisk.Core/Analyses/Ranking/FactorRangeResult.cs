using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>The failure probability with one factor held at points of its range, all with the same random numbers.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="DistanceKm">The distance of the failure event, km.</param>
/// <param name="Base">The scenario as it is, the factor free.</param>
/// <param name="Points">The points, ascending; of a choice its states; of the road mix one, the stated shares.</param>
/// <param name="IsConditional">Whether exact failure probabilities given the damage are averaged, or failures counted.</param>
/// <param name="Run">The run behind it; its evaluations are those of each point.</param>
public sealed record FactorRangeResult(
    Factor Factor, double DistanceKm, ComparedCase Base, ImmutableArray<HeldPoint> Points, bool IsConditional, RunRecord Run);

/// <summary>A factor held at one point.</summary>
/// <param name="Level">The share of vehicles at or below it; of a choice the probability of the state; NaN for the road mix.</param>
/// <param name="Value">The value, in the factor's unit; of a category its index; NaN for the road mix.</param>
/// <param name="Case">What becomes of the scenario, compared with the scenario as it is.</param>
public sealed record HeldPoint(double Level, double Value, ComparedCase Case);
