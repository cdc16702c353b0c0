using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Ranking.Shares;

/// <summary>The dependence of a scenario's factors by their normal scores, and the way between scores and values.</summary>
internal static class FactorDependence
{
    /// <summary>The dependence of those factors that are correlated; null where none is.</summary>
    public static ScoreDependence? Of(Scenario scenario, ImmutableArray<Factor> factors)
    {
        string[] names = [.. scenario.Correlations.Where(c => c.Spearman != 0).SelectMany(c => new[] { c.First, c.Second }).Distinct()];
        if (names.Length == 0)
        {
            return null;
        }

        var spearman = new double[names.Length, names.Length];
        for (int i = 0; i < names.Length; i++)
        {
            spearman[i, i] = 1;
        }

        foreach (RankCorrelation c in scenario.Correlations.Where(c => c.Spearman != 0))
        {
            (int i, int j) = (Array.IndexOf(names, c.First), Array.IndexOf(names, c.Second));
            spearman[i, j] = spearman[j, i] = c.Spearman;
        }

        ImmutableArray<int> members = [.. names.Select(n => factors.Select((f, i) => (f, i)).Single(x => x.f.Name == n).i)];
        return new ScoreDependence(members, new GaussianCopula(names, spearman).Pearson);
    }

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
