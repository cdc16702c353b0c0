using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>The explanations, alone and in pairs, and 'nothing unusual'; those that known states settle stand apart.</summary>
internal static class ExplanationSummary
{
    /// <summary>Weighs them.</summary>
    /// <param name="evidence">The explanations, and the states that are known.</param>
    /// <param name="patterns">The probability of each pattern under the scenario's distributions.</param>
    /// <param name="factors">The factor that the stated priors put on each pattern.</param>
    /// <param name="sums">The posterior without these factors.</param>
    public static ImmutableArray<ExplanationShift> Of(
        Evidence evidence, double[] patterns, double[] factors, PosteriorSums sums)
    {
        ImmutableArray<Explanation> explanations = evidence.Explanations;
        if (explanations.IsEmpty)
        {
            return [];
        }

        int[] settled = [.. Enumerable.Range(0, explanations.Length).Where(e => explanations[e].SettledBy(evidence.Known) is not null)];
        int[] open = [.. Enumerable.Range(0, explanations.Length).Except(settled)];
        int weighed = open.Sum(e => 1 << e);
        double[][] groups = sums.Patterns;
        double[] total = [.. factors.Select((_, s) => groups.Sum(g => g[s]))];
        double meanFactor = total.Zip(factors, (w, f) => w * f).Sum() / total.Sum();
        IEnumerable<int[]> single = open.Select(i => new[] { i });
        IEnumerable<int[]> pairs = from i in open from j in open where i < j select new[] { i, j };
        double Prior(int mask) => PriorWeights.Probability(patterns, factors, mask, weighed);
        ExplanationShift Weigh(int[] events)
        {
            int mask = events.Sum(e => 1 << e);
            Interval posterior = Jackknife.Estimate(groups, s => PriorWeights.Probability(s, factors, mask, weighed));
            return new ExplanationShift(
                [.. events.Select(e => explanations[e].Name)], Prior(mask), sums.Bounded(posterior, factors.Max() / meanFactor));
        }

        return
        [
            .. single.Select(Weigh).OrderByDescending(e => e.Posterior.Estimate),
            .. pairs.Select(Weigh).OrderByDescending(e => e.Posterior.Estimate),
            .. open.Length == 0 ? Array.Empty<ExplanationShift>() : [Weigh([])],
            .. settled.Select(e => Settled(explanations[e], Prior(1 << e), explanations[e].SettledBy(evidence.Known) == true)),
        ];
    }

    private static ExplanationShift Settled(Explanation explanation, double prior, bool holds) =>
        new([explanation.Name], prior, holds ? new Interval(1, 1, 1) : new Interval(0, 0, 0)) { Settled = holds };
}
