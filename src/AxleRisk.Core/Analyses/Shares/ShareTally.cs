using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The work of one block of pairs: the Shapley values, summed over the pairs, of each output. The closed moments of a subset
/// are taken from both base rows, of the subset from x and of its complement from x'.
/// </summary>
internal sealed class ShareTally(ShareProblem problem, ulong seed, bool allSubsets)
{
    private readonly PairRows? allRows = allSubsets ? PairRows.OfAllSubsets(problem.Columns.Length, problem.Dependence) : null;
    private readonly OrderGame orders = new(problem.Columns.Length, problem.ScalePlayers);
    private readonly int scaleSubsets = 1 << problem.ScalePlayers;

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
        double[] outputs = new double[rows.Rows.Count];
        double[][] ofX = CreateJoint(outputs.Length), ofSecond = CreateJoint(outputs.Length);
        double[][] worth = [.. problem.Moments.Select(_ => new double[rows.Subsets * scaleSubsets])];
        int all = rows.Subsets - 1;
        MixedRow[] mixed = new MixedRow[outputs.Length];
        for (int pair = 0; pair < count; pair++)
        {
            for (int row = 0; row < mixed.Length; row++)
            {
                mixed[row] = rows.Rows[row] with { Pair = pair };
            }

            evaluator.Evaluate(mixed, outputs);
            for (int m = 0; m < worth.Length; m++)
            {
                problem.Moments[m].Fill(outputs[all], outputs, ofX);
                problem.Moments[m].Fill(outputs[0], outputs, ofSecond);
                for (int q = 0; q < scaleSubsets; q++)
                {
                    AddWorth(ofX[q], ofSecond[q], rows.Complements.AsSpan(), worth[m].AsSpan(q * rows.Subsets, rows.Subsets));
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
        double[] outputs = new double[mixed.Length];
        evaluator.Evaluate(mixed, outputs);
        double[][] values = [.. problem.Moments.Select(_ => new double[problem.Players])];
        double[][] joint = CreateJoint(rows.Max(r => r.Rows.Count));
        for (int pair = 0, start = 0; pair < count; start += rows[pair].Rows.Count, pair++)
        {
            AddOrder(order[pair], rows[pair], outputs.AsSpan(start, rows[pair].Rows.Count), joint, values);
        }

        return values;
    }

    /// <summary>Adds an order of players kept from x, and its reverse kept from x': they share their rows.</summary>
    private void AddOrder(int[] order, PairRows rows, ReadOnlySpan<double> outputs, double[][] joint, double[][] values)
    {
        int last = order.Length;
        int[] reverse = new int[last];
        Span<int> places = stackalloc int[last + 1], complements = stackalloc int[last + 1];
        for (int k = 0; k <= last; k++)
        {
            places[k] = k;
            complements[k] = rows.Complements[last - k];
        }

        for (int k = 0; k < last; k++)
        {
            reverse[k] = order[last - 1 - k];
        }

        for (int m = 0; m < values.Length; m++)
        {
            problem.Moments[m].Fill(outputs[last], outputs, joint);
            orders.Add(order, joint, places, 0.5, values[m]);
            problem.Moments[m].Fill(outputs[0], outputs, joint);
            orders.Add(reverse, joint, complements, 0.5, values[m]);
        }
    }

    private double[][] CreateJoint(int rows) => [.. Enumerable.Range(0, scaleSubsets).Select(_ => new double[rows])];
}
