using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>The worst combinations for a trip: the search of combined effects on the vehicles that reach its start, for the event of failing on it.</summary>
internal static class TripCombinations
{
    /// <summary>The most combinations told.</summary>
    private const int Listed = 5;

    /// <summary>Searches the sample; null where no vehicle reaches the start or nothing can be combined.</summary>
    public static CombineResult? Search(LifeModel whole, RangePlan plan, TripSample sample, int threads)
    {
        DrawnRows rows = Survivors(whole, plan, sample);
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
    /// The vehicles whose own Miner sum and scatter let them reach the start. Of such a vehicle, whatever of these two is
    /// left to chance given what is known of it, P(fails on the trip) is P(fails between start and end) / P(reaches the start).
    /// </summary>
    private static DrawnRows Survivors(LifeModel whole, RangePlan plan, TripSample sample)
    {
        var crude = new TripSurvival(null);
        (int Block, int Row)[] kept =
        [
            .. from block in Enumerable.Range(0, sample.Blocks.Count)
               from row in Enumerable.Range(0, sample.Blocks[block].Rows)
               where crude.At(sample.Blocks[block].Start[row], sample.Blocks[block].Drawn[row]) > 0
               select (block, row),
        ];
        Factor? miner = Of(whole, Quantities.MinerSum), scatter = Of(whole, Quantities.LifeScatter);
        double[] Weights(Func<TripBlock, int, TripSurvival> known) => [.. kept.Select(k => Weight(sample.Blocks[k.Block], k.Row, known))];
        double[] counted = Weights((_, _) => crude);
        double[][] weights = !plan.IsConditional ? [counted, counted, counted, counted]
            :
            [
                Weights((_, _) => new TripSurvival(whole.Scale)), Weights((b, r) => Holding(whole.Scale, miner, b, r)),
                Weights((b, r) => Holding(whole.Scale, scatter, b, r)), counted,
            ];
        ulong[][] bits = [.. plan.Ranges.Select(_ => RangeRows.NewBits(kept.Length))];
        for (int r = 0; r < bits.Length; r++)
        {
            for (int i = 0; i < kept.Length; i++)
            {
                ulong word = sample.Blocks[kept[i].Block].Bits[r][kept[i].Row >> 6];
                bits[r][i >> 6] |= (word >> (kept[i].Row & 63) & 1) << (i & 63);
            }
        }

        return new DrawnRows(new EventRows(weights, [.. kept.Select(k => sample.Blocks[k.Block].Group[k.Row])], sample.Groups), bits, false);
    }

    private static Factor? Of(LifeModel model, Quantity quantity) =>
        model.Factors.Factors.FirstOrDefault(f => f is ScalarFactor s && s.Input.Quantity == quantity);

    private static TripSurvival Holding(LifeScale scale, Factor? factor, TripBlock block, int row) =>
        new(factor is null ? scale : scale.Hold(factor, block.Values[factor.FirstColumn][row]));

    private static double Weight(TripBlock block, int row, Func<TripBlock, int, TripSurvival> known)
    {
        TripSurvival survival = known(block, row);
        double start = block.Start[row], drawn = block.Drawn[row];
        double reaches = survival.At(start, drawn);
        return reaches > 0 ? Math.Min(1, survival.Fails(start, start + block.Legs.Sum(l => l[row]), drawn) / reaches) : 0;
    }
}
