using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Analyses.Ranking.Shares;

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
        double[][][] joint = [CreateJoint(outputs.Length), CreateJoint(outputs.Length)];
        double[][] worth = [.. problem.Moments.Select(_ => new double[rows.FromX.Length * scaleSubsets])];
        int all = rows.FromX.Length - 1;
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
                problem.Moments[m].Fill(outputs[rows.X], outputs, joint[0]);
                problem.Moments[m].Fill(outputs[rows.Second], outputs, joint[1]);
                for (int q = 0; q < scaleSubsets; q++)
                {
                    for (int s = 0; s <= all; s++)
                    {
                        worth[m][(q * (all + 1)) + s] += 0.5 * (joint[0][q][rows.FromX[s]] + joint[1][q][rows.Complements[all - s]]);
                    }
                }
            }
        }

        return [.. worth.Select(w => SubsetGame.Values(problem.Players, w))];
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
        for (int pair = 0, start = 0; pair < count; start += rows[pair].Rows.Count, pair++)
        {
            AddOrder(order[pair], rows[pair], outputs.AsSpan(start, rows[pair].Rows.Count), values);
        }

        return values;
    }

    /// <summary>Adds an order of players kept from x, and its reverse kept from x': they share their rows.</summary>
    private void AddOrder(int[] order, PairRows rows, ReadOnlySpan<double> outputs, double[][] values)
    {
        int[] reverse = [.. order.Reverse()];
        double[][] joint = CreateJoint(outputs.Length);
        for (int m = 0; m < values.Length; m++)
        {
            problem.Moments[m].Fill(outputs[rows.X], outputs, joint);
            orders.Add(order, [.. joint.Select(j => rows.FromX.Select(r => j[r]).ToArray())], 0.5, values[m]);
            problem.Moments[m].Fill(outputs[rows.Second], outputs, joint);
            orders.Add(reverse, [.. joint.Select(j => rows.Complements.Reverse().Select(r => j[r]).ToArray())], 0.5, values[m]);
        }
    }

    private double[][] CreateJoint(int rows) => [.. Enumerable.Range(0, scaleSubsets).Select(_ => new double[rows])];
}
