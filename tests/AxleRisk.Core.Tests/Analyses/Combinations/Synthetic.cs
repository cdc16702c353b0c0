using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

/// <summary>Samples of independent factors on (0, 1), of which the upper fifth of each is a range, with any failure probability.</summary>
internal static class Synthetic
{
    public static double[][] Units(int factors, int rows, ulong seed) => [.. Enumerable.Range(0, factors).Select(f =>
    {
        var column = new double[rows];
        SamplingPlan.FromName("plain", rows).Fill(new StreamKey(seed, $"f{f}"), f, 0, column);
        return column;
    })];

    /// <summary>Failure probabilities from each row's values.</summary>
    public static EventRows Rows(double[][] units, Func<double[], double> probability) => EventRows.Of(
        [.. Enumerable.Range(0, units[0].Length).Select(row => probability([.. units.Select(u => u[row])]))], 64);

    public static ImmutableArray<RangeRows> UpperFifths(double[][] units) => [.. units.Select((u, owner) => Of(owner, u, x => x > 0.8))];

    public static RangeRows Of(int owner, double[] column, Func<double, bool> inside, int scale = 0)
    {
        ulong[] bits = RangeRows.NewBits(column.Length);
        for (int row = 0; row < column.Length; row++)
        {
            bits[row >> 6] |= inside(column[row]) ? 1UL << (row & 63) : 0;
        }

        return new RangeRows(owner, bits, scale);
    }

    /// <summary>The combinations listed, each as the numbers of its factors.</summary>
    public static int[][] Listed(EventRows rows, ImmutableArray<RangeRows> ranges, CombineLimits? limits = null, int threads = 2) =>
        [.. Search(rows, ranges, limits, threads).Combinations.Select(c => c.Members.Select(m => int.Parse(m.Column)).ToArray())];

    public static CombineResult Search(EventRows rows, ImmutableArray<RangeRows> ranges, CombineLimits? limits = null, int threads = 2) =>
        CombineAnalysis.Search(
            rows, Told(ranges.Length), ranges, RangePlan.Possible(ranges.Select(_ => 2), 4), limits ?? new CombineLimits(), threads);

    /// <summary>Ranges as told, the column named by its number.</summary>
    public static ImmutableArray<AdverseRange> Told(int count) => [.. Enumerable.Range(0, count).Select(i =>
    {
        var value = new Value.Uncertain(new Uniform(0, 1), Knowledge.Varies);
        var factor = new ScalarFactor(new Input($"f{i}", Quantities.SpeedFactor, null, value, false), value, i);
        return new AdverseRange(factor, i.ToString(), RangePart.Above, 0.8, 0.2);
    })];
}
