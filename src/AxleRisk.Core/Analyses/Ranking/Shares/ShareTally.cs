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

    /// <summary>The evaluations of one pair; of random orders the mean, where dependent players make it differ.</summary>
    public static double EvaluationsOfPair(ShareProblem problem, bool allSubsets)
    {
        if (allSubsets)
        {
            return PairRows.OfAllSubsets(problem.Columns.Length, problem.Dependence).Rows.Count;
        }

        // The first players of the given order split dependent ones about as often as those of a random order.
        int[] order = [.. Enumerable.Range(0, problem.Columns.Length)];
        return problem.Dependence is null ? order.Length + 1 : PairRows.OfOrder(order, problem.Dependence).Rows.Count;
    }

    private double[][] OfAllSubsets(PairEvaluator evaluator, PairRows rows, int count)
    {
        double[] outputs = new double[rows.Rows.Count];
        double[][][] joint = [CreateJoint(outputs.Length), CreateJoint(outputs.Length)];
        double[][] worth = [.. problem.Moments.Select(_ => new double[rows.FromX.Length * scaleSubsets])];
        int all = rows.FromX.Length - 1;
        for (int pair = 0; pair < count; pair++)
        {
            evaluator.Evaluate(pair, rows, outputs);
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
        int[] order = new int[problem.Columns.Length];
        double[][] values = [.. problem.Moments.Select(_ => new double[problem.Players])];
        for (int pair = 0; pair < count; pair++)
        {
            RandomOrder.Fill(stream, first + pair, order);
            PairRows rows = PairRows.OfOrder(order, problem.Dependence);
            double[] outputs = new double[rows.Rows.Count];
            evaluator.Evaluate(pair, rows, outputs);
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

        return values;
    }

    private double[][] CreateJoint(int rows) => [.. Enumerable.Range(0, scaleSubsets).Select(_ => new double[rows])];
}
