using System.Collections.Immutable;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>Pairs of ranges against what they would give if their effects multiplied.</summary>
internal static class PairEffects
{
    /// <summary>The pairs of these ranges that lie in different factors and have enough rows, the surest departure first.</summary>
    /// <param name="rows">The sample.</param>
    /// <param name="ranges">All ranges as told.</param>
    /// <param name="inside">Their rows.</param>
    /// <param name="chosen">The numbers of the ranges to pair.</param>
    /// <param name="limits">Rows and failures needed; the chance of a false claim, which is divided by the number of pairs.</param>
    public static ImmutableArray<PairEffect> Of(
        EventRows rows, IReadOnlyList<AdverseRange> ranges, IReadOnlyList<RangeRows> inside, IReadOnlyList<int> chosen,
            CombineLimits limits)
    {
        var sums = new GroupSums(rows, inside);
        int[][] pairs = [.. from a in chosen from b in chosen where a < b && inside[a].Owner != inside[b].Owner select new[] { a, b }];
        double critical = -StudentT.Quantile(limits.ErrorRate / (2.0 * Math.Max(1, pairs.Length)), sums.DegreesOfFreedom);
        IEnumerable<(PairEffect Effect, double Surety)> effects = pairs.Select(p =>
        {
            double surety = Surety(sums, p);
            int count = (int)Math.Round(sums.Estimate((n, _) => n[0], p).Estimate);
            bool enough = count >= limits.LeastRows
                && sums.Estimate((n, f) => Math.Min(f[0], n[0] * Product(n, f)), p, [p[0]],
                    [p[1]]).Estimate >= limits.LeastEffectiveFailures;
            return (new PairEffect(
                ranges[p[0]], ranges[p[1]], sums.Probability(p),
                sums.Estimate(Product, p, [p[0]], [p[1]]), sums.Estimate((n, f) => f[0] / n[0] / Product(n, f), p, [p[0]], [p[1]]),
                (double)count / rows.Count, count, enough && surety > critical), surety);
        });
        return [.. effects.Where(e => e.Effect.Rows >= limits.LeastRows).OrderByDescending(e => e.Surety).Select(e => e.Effect)];
    }

    /// <summary>
    /// The departure in standard errors, the smaller of that of the difference and that of the logarithm of the ratio: of few
    /// failures the one overstates a deficit and the other an excess. NaN, which is sorted last and surpasses nothing, where either
    /// has no error to be measured by.
    /// </summary>
    private static double Surety(GroupSums sums, int[] pair)
    {
        double difference = sums.Standardised((n, f) => (f[0] / n[0]) - Product(n, f), pair, [pair[0]], [pair[1]]);
        double ratio = sums.Standardised((n, f) => Math.Log(f[0] / n[0] / Product(n, f)), pair, [pair[0]], [pair[1]]);
        return Math.Min(Math.Abs(difference), Math.Abs(ratio));
    }

    private static double Product(double[] rows, double[] failures) =>
        failures[1] / rows[1] * (failures[2] / rows[2]) / (failures[3] / rows[3]);
}
