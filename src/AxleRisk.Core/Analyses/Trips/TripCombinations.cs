using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// The worst combinations for a trip: the search of combined effects on the vehicles that reach its start, for the event of
/// failing on it.
/// </summary>
internal static class TripCombinations
{
    /// <summary>The most combinations told.</summary>
    private const int Listed = 5;

    /// <summary>Searches the sample; null where no vehicle reaches the start or nothing can be combined.</summary>
    public static CombineResult? Search(LifeModel whole, RangePlan plan, TripSample sample, int threads)
    {
        DrawnRows rows = Survivors(plan, sample);
        if (plan.Ranges.IsEmpty || !(rows.Rows.Failures > 0) || !HasAllGroups(rows.Rows))
        {
            return null;
        }

        var limits = new CombineLimits { Listed = Listed };
        (ImmutableArray<AdverseRange> ranges, ImmutableArray<RangeRows> inside) = RangeChoice.Choose(plan, rows);
        return CombineAnalysis.Search(rows.Rows, ranges, inside, plan.Possible(limits.MostMembers), limits, threads);
    }

    private static bool HasAllGroups(EventRows rows) => rows.Group.Distinct().Count() == rows.Groups;

    /// <summary>
    /// The vehicles whose own Miner sum and scatters let them reach the start. Of such a vehicle, whatever of these is
    /// left to chance given what is known of it, P(fails on the trip) is P(fails between start and end) / P(reaches the start).
    /// </summary>
    internal static DrawnRows Survivors(RangePlan plan, TripSample sample)
    {
        (int Block, int Row)[] kept =
        [
            .. from block in Enumerable.Range(0, sample.Blocks.Count)
               from row in Enumerable.Range(0, sample.Blocks[block].Rows)
               where !FailureChances.Exceeds(sample.Blocks[block].StartOf(row), sample.Blocks[block].LimitsOf(row))
               select (block, row),
        ];
        double[][] weights = Workspace.Columns(plan.Chances.Count, kept.Length);
        var fails = new double[plan.Chances.Count];
        for (int i = 0; i < kept.Length; i++)
        {
            FillWeights(plan, sample.Blocks[kept[i].Block], kept[i].Row, fails);
            for (int subset = 0; subset < fails.Length; subset++)
            {
                weights[subset][i] = fails[subset];
            }
        }

        ulong[][] bits = [.. plan.Ranges.Select(_ => RangeRows.NewBits(kept.Length))];
        for (int r = 0; r < bits.Length; r++)
        {
            for (int i = 0; i < kept.Length; i++)
            {
                ulong word = sample.Blocks[kept[i].Block].Bits[r][kept[i].Row >> 6];
                bits[r][i >> 6] |= (word >> (kept[i].Row & 63) & 1) << (i & 63);
            }
        }

        return new DrawnRows(new EventRows(weights, [.. kept.Select(k => sample.Blocks[k.Block].Group[k.Row])], sample.Groups), bits,
            false);
    }

    private static void FillWeights(RangePlan plan, TripBlock block, int row, Span<double> fails)
    {
        ReadOnlySpan<double> start = block.StartOf(row);
        Span<double> end = stackalloc double[start.Length];
        start.CopyTo(end);
        foreach (double[] leg in block.Legs)
        {
            VectorColumns.Add(leg.AsSpan(row * end.Length, end.Length), end);
        }

        if (plan.IsConditional)
        {
            plan.Chances.Fill(start, end, block.LimitsOf(row), block.Values, row, fails);
        }
        else
        {
            fails[0] = FailureChances.Exceeds(end, block.LimitsOf(row)) ? 1 : 0;
        }
    }
}
