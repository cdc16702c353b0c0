using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Outcomes;

/// <summary>A summary as a row of numbers, for another run of the same study: whole numbers, bit for bit in the place of doubles.</summary>
internal static class SummaryNumbers
{
    /// <summary>The numbers of a summary.</summary>
    public static double[] Of(LifeSummary summary)
    {
        List<long> numbers = [summary.WithShares];
        foreach (LogHistogram histogram in HistogramsOf(summary))
        {
            (int Bin, long Count)[] filled = [.. histogram.Filled];
            numbers.AddRange([histogram.Below, histogram.Above, filled.Length, .. filled.SelectMany(b => new[] { b.Bin, b.Count })]);
        }

        foreach (ExactSum sum in SumsOf(summary).SelectMany(s => s))
        {
            numbers.AddRange([(long)(sum.Units >> 64), (long)sum.Units]);
        }

        return [.. numbers.Select(BitConverter.Int64BitsToDouble)];
    }

    /// <summary>Adds the numbers of a summary of the same scenario to one.</summary>
    public static void Add(LifeSummary to, double[] numbers)
    {
        int at = 0;
        long Next() => BitConverter.DoubleToInt64Bits(numbers[at++]);
        LifeSummary from = new(to.LegShareSums.Length, to.Modes?.Empty());
        long withShares = Next();
        foreach (LogHistogram histogram in HistogramsOf(from))
        {
            histogram.AddOutside(Next(), Next());
            for (long bins = Next(); bins > 0; bins--)
            {
                histogram.AddBin((int)Next(), Next());
            }
        }

        foreach (ExactSum[] sums in SumsOf(from))
        {
            for (int i = 0; i < sums.Length; i++)
            {
                sums[i] = new ExactSum(new Int128((ulong)Next(), (ulong)Next()));
            }
        }

        from.AddShares(withShares, default(ReadOnlySpan<double>), default);
        to.Add(from);
    }

    private static IEnumerable<LogHistogram> HistogramsOf(LifeSummary summary) =>
        [summary.Damage, summary.Life, .. summary.Modes?.FirstCounts ?? []];

    private static IEnumerable<ExactSum[]> SumsOf(LifeSummary summary) =>
        [summary.LegShareSums, summary.LegShareSquares, .. summary.Modes?.Sums() ?? []];
}
