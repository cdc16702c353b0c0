using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>A combination found, by the numbers of its ranges in ascending order.</summary>
internal sealed record Candidate(int[] Items, int Rows, double Failures, double SquaredFailures)
{
    public double Probability => Failures / Rows;

    public double EffectiveFailures => SquaredFailures > 0 ? Failures * Failures / SquaredFailures : 0;
}

/// <summary>What a search gave.</summary>
internal sealed record SearchOutcome(IReadOnlyList<Candidate> Eligible, long Evaluated);

/// <summary>
/// Finds every combination with enough rows and enough failures by depth-first branch and bound. Rows and failures can only
/// become fewer when a member is added, so a combination with too few of either ends its branch: nothing is missed.
/// </summary>
internal sealed class CombinationSearch(EventRows rows, IReadOnlyList<RangeRows> ranges, CombineLimits limits)
{
    // Ranges of Miner sum and scatter change the weights, which voids the bound: they stand first, and until the last of them
    // has been passed only the number of rows prunes.
    private readonly int scaleRanges = ranges.TakeWhile(r => r.Scale != 0).Count();
    private readonly int[][] itemsOfOwner = [.. Enumerable.Range(0, ranges.Select(r => r.Owner).DefaultIfEmpty(-1).Max() + 1)
        .Select(owner => Enumerable.Range(0, ranges.Count).Where(i => ranges[i].Owner == owner).ToArray())];
    private readonly double leastFailures = limits.LeastCoverage * rows.Failures;

    /// <summary>Searches.</summary>
    /// <exception cref="InvalidOperationException">The ranges with a scale bit do not stand first.</exception>
    public SearchOutcome Run(int threads)
    {
        if (ranges.Skip(scaleRanges).Any(r => r.Scale != 0))
        {
            throw new InvalidOperationException("ranges of the scale must stand first");
        }

        BlockRun<Branch> run = BlockRunner.Run(
            ranges.Count, 1, new RunOptions { Threads = threads }, () => new Buffers(limits.MostMembers, rows.Count), (buffers, first, _) =>
            {
                var branch = new Branch([], 0);
                Visit(buffers, branch, 0, (int)first, 0, rows.Count);
                return branch;
            });
        return new SearchOutcome([.. run.Blocks.SelectMany(b => b.Found)], run.Blocks.Sum(b => b.Evaluated));
    }

    /// <summary>
    /// Adds range <paramref name="item"/> as member number <paramref name="depth"/> to the combination in the buffers, and goes
    /// on from there.
    /// </summary>
    private void Visit(Buffers buffers, Branch branch, int depth, int item, int scale, int parentRows)
    {
        branch.Evaluated++;
        buffers.Items[depth] = item;
        scale |= ranges[item].Scale;
        Candidate here = Filter(buffers, depth, item, scale, parentRows);
        bool fewFailures = !(here.Failures >= leastFailures);
        if (here.Rows < limits.LeastRows || (fewFailures && item >= scaleRanges - 1))
        {
            return;
        }

        if (!fewFailures && here.EffectiveFailures >= limits.LeastEffectiveFailures)
        {
            branch.Found.Add(here);
        }

        for (int next = item + 1; depth + 1 < limits.MostMembers && next < ranges.Count; next++)
        {
            if (!buffers.Items.AsSpan(0, depth + 1).ContainsAny(itemsOfOwner[ranges[next].Owner]))
            {
                Visit(buffers, branch, depth + 1, next, scale, here.Rows);
            }
        }
    }

    /// <summary>Keeps the parent's rows that lie in the range, and sums their failures in the order of the rows.</summary>
    private Candidate Filter(Buffers buffers, int depth, int item, int scale, int parentRows)
    {
        RangeRows range = ranges[item];
        double[] weights = rows.Weights[scale];
        int[]? from = depth == 0 ? null : buffers.Rows[depth - 1];
        int[] to = buffers.Rows[depth];
        int count = 0;
        double sum = 0, squares = 0;
        for (int i = 0; i < parentRows; i++)
        {
            int row = from is null ? i : from[i];
            if (range.Has(row))
            {
                to[count++] = row;
                double w = weights[row];
                sum += w;
                squares += w * w;
            }
        }

        return new Candidate(buffers.Items[..(depth + 1)], count, sum, squares);
    }

    private sealed record Branch(List<Candidate> Found, long Start)
    {
        public long Evaluated { get; set; } = Start;
    }

    private sealed class Buffers(int depth, int rows)
    {
        public int[] Items { get; } = new int[depth];

        public int[][] Rows { get; } = [.. Enumerable.Range(0, depth).Select(_ => new int[rows])];
    }
}
