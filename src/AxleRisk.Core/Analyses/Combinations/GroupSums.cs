using System.Numerics;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>Rows and failures of combinations by group of the jackknife, and what follows from them. Keeps what it has summed.</summary>
internal sealed class GroupSums(EventRows rows, IReadOnlyList<RangeRows> ranges)
{
    private readonly Dictionary<UInt128, (double[] Rows, double[] Failures)> known = [];

    public int DegreesOfFreedom => rows.Groups - 1;

    /// <summary>
    /// A statistic of several combinations with its 95 % interval; it gets the numbers of rows and the failures of each, and, as
    /// the last of each, those of all rows.
    /// </summary>
    public Interval Estimate(Func<double[], double[], double> statistic, params ReadOnlySpan<int[]> combinations) =>
        Jackknife.Estimate(Join(combinations, out int n), s => statistic(s[..n], s[n..]));

    /// <summary>The same as estimate over standard error; NaN where that is zero.</summary>
    public double Standardised(Func<double[], double[], double> statistic, params ReadOnlySpan<int[]> combinations)
    {
        (double estimate, double error) = Jackknife.WithStandardError(Join(combinations, out int n), s => statistic(s[..n], s[n..]));
        return error > 0 ? estimate / error : double.NaN;
    }

    /// <summary>P(failure | combination).</summary>
    public Interval Probability(int[] combination) => Estimate((n, f) => f[0] / n[0], combination).Within(0, 1);

    /// <summary>How far, in standard errors, a combination's failure probability lies above another's.</summary>
    public double Excess(int[] combination, int[] other) => Standardised((n, f) => (f[0] / n[0]) - (f[1] / n[1]), combination, other);

    private double[][] Join(ReadOnlySpan<int[]> combinations, out int count)
    {
        int n = count = combinations.Length + 1;
        var joined = new double[rows.Groups][];
        for (int g = 0; g < joined.Length; g++)
        {
            joined[g] = new double[2 * n];
        }

        for (int c = 0; c < n; c++)
        {
            (double[] rowsOf, double[] failures) = Of(c < combinations.Length ? combinations[c] : []);
            for (int g = 0; g < joined.Length; g++)
            {
                joined[g][c] = rowsOf[g];
                joined[g][n + c] = failures[g];
            }
        }

        return joined;
    }

    private (double[] Rows, double[] Failures) Of(int[] combination)
    {
        // Up to eight ranges (two combinations joined), fewer than 65,535 of them.
        UInt128 key = 0;
        foreach (int item in combination)
        {
            key = (key << 16) | (uint)(item + 1);
        }

        if (!known.TryGetValue(key, out (double[] Rows, double[] Failures) sums))
        {
            known[key] = sums = Sum(combination);
        }

        return sums;
    }

    private (double[] Rows, double[] Failures) Sum(int[] combination)
    {
        var counts = new double[rows.Groups];
        var failures = new double[rows.Groups];
        double[] weights = rows.Weights[combination.Aggregate(0, (scale, item) => scale | ranges[item].Scale)];
        int words = (rows.Count + 63) / 64;
        for (int word = 0; word < words; word++)
        {
            int left = rows.Count - (64 * word);
            ulong bits = left >= 64 ? ulong.MaxValue : (1UL << left) - 1;
            foreach (int item in combination)
            {
                bits &= ranges[item].Bits[word];
            }

            for (; bits != 0; bits &= bits - 1)
            {
                int row = (64 * word) + BitOperations.TrailingZeroCount(bits);
                counts[rows.Group[row]]++;
                failures[rows.Group[row]] += weights[row];
            }
        }

        return (counts, failures);
    }
}
