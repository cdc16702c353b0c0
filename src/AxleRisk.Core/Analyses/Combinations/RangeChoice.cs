using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>Decides, after the draw, which end of each factor is the adverse one; states of a choice are all kept.</summary>
internal static class RangeChoice
{
    /// <summary>The ranges to combine, with their rows; in the order of the plan.</summary>
    public static (ImmutableArray<AdverseRange> Ranges, ImmutableArray<RangeRows> Rows) Choose(RangePlan plan, DrawnRows drawn)
    {
        RangeRows[] all = [.. plan.Ranges.Select((r, i) => new RangeRows(r.Owner, drawn.Bits[i], r.Scale))];
        var sums = new GroupSums(drawn.Rows, all);
        AdverseRange[] told = [.. plan.Ranges.Select((r, i) => r.Range with { Probability = sums.Probability([i]) })];
        IEnumerable<int> kept = Enumerable.Range(0, all.Length)
            .GroupBy(i => (plan.Ranges[i].Column, State: told[i].Part == RangePart.State ? i : -1))
            .Select(g => g.OrderByDescending(i => told[i].Probability.Estimate).First());
        int[] order = [.. kept.Order()];
        return ([.. order.Select(i => told[i])], [.. order.Select(i => all[i])]);
    }
}
