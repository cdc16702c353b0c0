using AxleRisk.Core.Randomness;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The work of one block of pairs: the Shapley values, summed over the pairs, of each output. The closed moments of a subset
/// are taken from both base rows, of the subset from x and of its complement from x'.
/// </summary>
internal sealed class ShareTally(ShareProblem problem, ulong seed, bool allSubsets)
{
    private readonly PairRows? allRows = allSubsets ? PairRows.OfAllSubsets(problem.Columns.Length, problem.Dependence) : null;
    private readonly OrderGame[] orders = [.. problem.Moments.Select(m => new OrderGame(problem.Players - m.ScalePlayers, m.ScalePlayers))];

    /// <summary>The sums of a block of pairs, by output.</summary>
    public double[][] Work(PairEvaluator evaluator, int replicate, long first, int count)
    {
        evaluator.Draw(replicate, first, count);
        return allRows is { } rows ? OfAllSubsets(evaluator, rows, count) : OfOrders(evaluator, replicate, first, count);
    }

    /// <summary>The evaluations of one pair; of random orders their mean, for dependent players make it differ.</summary>
    public static double EvaluationsOfPair(ShareProblem problem, bool allSubsets)
    {
        if (allSubsets)
        {
            return PairRows.OfAllSubsets(problem.Columns.Length, problem.Dependence).Rows.Count;
        }

        const int Orders = 64;
        var stream = new RandomStream(new StreamKey(0, "shares/typical orders"));
        return Enumerable.Range(0, Orders)
            .Average(i => PairRows.OfOrder(RandomOrder.Of(stream, i, problem.Columns.Length), problem.Dependence).Rows.Count);
    }

    private double[][] OfAllSubsets(PairEvaluator evaluator, PairRows rows, int count)
    {
        double[][] outputs = CreateOutputs(rows.Rows.Count);
        double[][][] ofX = CreateJoint(rows.Rows.Count), ofSecond = CreateJoint(rows.Rows.Count);
        double[][] worth = [.. problem.Moments.Select(_ => new double[1 << problem.Players])];
        MixedRow[] mixed = new MixedRow[rows.Rows.Count];
        for (int pair = 0; pair < count; pair++)
        {
            for (int row = 0; row < mixed.Length; row++)
            {
                mixed[row] = rows.Rows[row] with { Pair = pair };
            }

            evaluator.Evaluate(mixed, outputs);
            for (int m = 0; m < worth.Length; m++)
            {
                // Without an output's scale players the first rows have all its subsets; complements of their own stand behind all.
                int subsets = 1 << (problem.Players - problem.Moments[m].ScalePlayers);
                Range of = ..(problem.Dependence is null ? subsets : mixed.Length);
                problem.Moments[m].Fill(outputs, subsets - 1, of, ofX[m]);
                problem.Moments[m].Fill(outputs, 0, of, ofSecond[m]);
                for (int q = 0; q < ofX[m].Length; q++)
                {
                    AddWorth(ofX[m][q], ofSecond[m][q], rows.Complements.AsSpan(0, subsets), worth[m].AsSpan(q * subsets, subsets));
                }
            }
        }

        return [.. worth.Select(w => SubsetGame.Values(problem.Players, w))];
    }

    /// <summary>Adds the worth of every subset: half from the rows that keep it from x, half from those that keep it from x'.</summary>
    private static void AddWorth(ReadOnlySpan<double> ofX, ReadOnlySpan<double> ofSecond, ReadOnlySpan<int> complements, Span<double> worth)
    {
        for (int s = 0, rest = complements.Length - 1; s < worth.Length; s++, rest--)
        {
            worth[s] += 0.5 * (ofX[s] + ofSecond[complements[rest]]);
        }
    }

    private double[][] OfOrders(PairEvaluator evaluator, int replicate, long first, int count)
    {
        var stream = new RandomStream(new StreamKey(seed, $"shares/orders/r{replicate}"));
        int[][] order = [.. Enumerable.Range(0, count).Select(pair => RandomOrder.Of(stream, first + pair, problem.Columns.Length))];
        PairRows[] rows = [.. order.Select(o => PairRows.OfOrder(o, problem.Dependence))];
        MixedRow[] mixed = [.. rows.SelectMany((plan, pair) => plan.Rows.Select(r => r with { Pair = pair }))];
        double[][] outputs = CreateOutputs(mixed.Length);
        evaluator.Evaluate(mixed, outputs);
        double[][] values = [.. problem.Moments.Select(_ => new double[problem.Players])];
        double[][][] joint = CreateJoint(rows.Max(r => r.Rows.Count));
        for (int pair = 0, start = 0; pair < count; start += rows[pair].Rows.Count, pair++)
        {
            for (int m = 0; m < values.Length; m++)
            {
                AddOrder(m, order[pair], rows[pair], outputs, start, joint[m], values[m]);
            }
        }

        return values;
    }

    /// <summary>Adds an order of players kept from x, and its reverse kept from x': they share their rows.</summary>
    private void AddOrder(int moment, int[] order, PairRows rows, double[][] outputs, int start, double[][] joint, double[] values)
    {
        // The order of those that are no scale players of this output, and the shortest prefix that has so many of them.
        JointMoment of = problem.Moments[moment];
        int last = order.Length, ordered = problem.Players - of.ScalePlayers;
        Span<int> forward = stackalloc int[ordered], reverse = stackalloc int[ordered];
        Span<int> places = stackalloc int[ordered + 1], complements = stackalloc int[ordered + 1];
        (places[0], complements[0]) = (0, rows.Complements[last]);
        for (int k = 0, f = 0, r = 0; k < last; k++)
        {
            if (order[k] < ordered)
            {
                (forward[f], places[f + 1]) = (order[k], k + 1);
                f++;
            }

            if (order[last - 1 - k] < ordered)
            {
                (reverse[r], complements[r + 1]) = (order[last - 1 - k], rows.Complements[last - 1 - k]);
                r++;
            }
        }

        Range all = start..(start + rows.Rows.Count);
        of.Fill(outputs, start + last, all, joint);
        orders[moment].Add(forward, joint, places, 0.5, values);
        of.Fill(outputs, start, all, joint);
        orders[moment].Add(reverse, joint, complements, 0.5, values);
    }

    private double[][] CreateOutputs(int rows) => Workspace.Columns(problem.Outputs, rows);

    private double[][][] CreateJoint(int rows) => [.. problem.Moments.Select(m => Workspace.Columns(1 << m.ScalePlayers, rows))];
}
