using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>The explanations, alone and in pairs, and 'nothing unusual'.</summary>
internal static class ExplanationSummary
{
    /// <summary>Weighs them.</summary>
    /// <param name="explanations">The explanations.</param>
    /// <param name="patterns">The probability of each pattern under the scenario's distributions.</param>
    /// <param name="factors">The factor that the stated priors put on each pattern.</param>
    /// <param name="sums">The posterior without these factors.</param>
    public static ImmutableArray<ExplanationShift> Of(
        ImmutableArray<Explanation> explanations, double[] patterns, double[] factors, PosteriorSums sums)
    {
        if (explanations.IsEmpty)
        {
            return [];
        }

        int count = explanations.Length;
        double[][] groups = sums.Patterns;
        double[] total = [.. factors.Select((_, s) => groups.Sum(g => g[s]))];
        double meanFactor = total.Zip(factors, (w, f) => w * f).Sum() / total.Sum();
        IEnumerable<int[]> single = Enumerable.Range(0, count).Select(i => new[] { i });
        IEnumerable<int[]> pairs = Enumerable.Range(0, count).SelectMany(i => Enumerable.Range(i + 1, count - i - 1).Select(j => new[] { i, j }));
        ExplanationShift Weigh(int[] events)
        {
            int mask = events.Sum(e => 1 << e);
            Interval posterior = Jackknife.Estimate(groups, s => PriorWeights.Probability(s, factors, mask));
            return new ExplanationShift(
                [.. events.Select(e => explanations[e].Name)], PriorWeights.Probability(patterns, factors, mask), sums.Bounded(posterior, factors.Max() / meanFactor));
        }

        return
        [
            .. single.Select(Weigh).OrderByDescending(e => e.Posterior.Estimate),
            .. pairs.Select(Weigh).OrderByDescending(e => e.Posterior.Estimate),
            Weigh([]),
        ];
    }
}
