using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>The dependence of a scenario's factors by their normal scores, and the way between scores and values.</summary>
internal static class FactorDependence
{
    /// <summary>The dependence of those factors that are correlated; null where none is.</summary>
    /// <param name="set">The scenario's factors.</param>
    /// <param name="evaluated">Those of them that are evaluated, all correlated ones among them; the dependence goes by their
    /// places.</param>
    public static ScoreDependence? Of(FactorSet set, ImmutableArray<Factor> evaluated) => set.Copula is { } copula
        ? new ScoreDependence([.. set.Correlated.Select(f => evaluated.IndexOf(f))], copula.Pearson)
        : null;

    /// <summary>The normal scores of unit values; those of the ends of the interval stay finite.</summary>
    public static void ToScores(ReadOnlySpan<double> unit, double[] scores)
    {
        for (int row = 0; row < unit.Length; row++)
        {
            scores[row] = StandardNormal.Quantile(Math.Clamp(unit[row], double.Epsilon, Math.BitDecrement(1.0)));
        }
    }

    /// <summary>A factor's values from its normal scores.</summary>
    public static void FromScores(Factor factor, double[] scores, int count, double[][] unit, double[][] values)
    {
        for (int row = 0; row < count; row++)
        {
            unit[factor.FirstColumn][row] = Math.Min(StandardNormal.Cumulative(scores[row]), Math.BitDecrement(1.0));
        }

        factor.Map(unit, values, count);
    }
}
