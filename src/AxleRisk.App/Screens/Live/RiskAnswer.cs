using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Screens.Live;

/// <summary>The risk and its curve drawn finer than the table shows it.</summary>
/// <param name="Result">The result, as the risk command gives it.</param>
/// <param name="Curve">The failure probability at distances that grow by equal ratios, from the sampled part alone.</param>
internal sealed record RiskAnswer(RiskResult Result, ImmutableArray<DistanceRisk> Curve);
