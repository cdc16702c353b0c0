namespace AxleRisk.Core.Analyses.Ranking.Shares;

/// <summary>One thread's buffers, and the way from pairs of base rows to the outputs of the rows mixed of them.</summary>
internal sealed class PairEvaluator
{
    private readonly ShareProblem problem;
    private readonly ShareSample sample;
    private readonly int capacity;
    private readonly double[][] mixed;
    private readonly double[][] mixedScores;
    private readonly double[] keptScores;
    private readonly double[] otherScores;
    private readonly double[] rowScores;
    private readonly Dictionary<ulong, double[,]> regressions = [];
    private Base x = new([], []);
    private Base second = new([], []);

    public PairEvaluator(ShareProblem problem, int capacity, long pairs)
    {
        this.problem = problem;
        this.capacity = capacity;
        sample = problem.CreateSample(capacity, pairs);
        int members = problem.Dependence?.Members.Length ?? 0;
        mixed = Arrays(problem.ColumnCount, capacity);
        mixedScores = Arrays(members, capacity);
        (keptScores, otherScores, rowScores) = (new double[members], new double[members], new double[members]);
    }

    /// <summary>Draws the base rows of consecutive pairs.</summary>
    public void Draw(int replicate, long first, int count)
    {
        (x, second) = (Drawn(false), Drawn(true));

        Base Drawn(bool isSecond)
        {
            var drawn = new Base(Arrays(problem.ColumnCount, count), Arrays(keptScores.Length, count));
            sample.Draw(replicate, isSecond, first, drawn.Values, drawn.Scores);
            return drawn;
        }
    }

    /// <summary>The outputs of the rows of one pair.</summary>
    public void Evaluate(int pair, PairRows plan, Span<double> outputs)
    {
        for (int start = 0; start < plan.Rows.Count; start += capacity)
        {
            int count = Math.Min(capacity, plan.Rows.Count - start);
            Mix(pair, plan, start, count);
            sample.Evaluate(mixed, count, outputs.Slice(start, count));
        }
    }

    private static double[][] Arrays(int columns, int rows)
    {
        var arrays = new double[columns][];
        for (int i = 0; i < columns; i++)
        {
            arrays[i] = new double[rows];
        }

        return arrays;
    }

    private void Mix(int pair, PairRows plan, int start, int count)
    {
        for (int player = 0; player < problem.Columns.Length; player++)
        {
            foreach (int column in problem.Columns[player])
            {
                (double ofX, double ofSecond) = (x.Values[column][pair], second.Values[column][pair]);
                for (int row = 0; row < count; row++)
                {
                    PairRows.Row r = plan.Rows[start + row];
                    mixed[column][row] = (r.Kept >> player & 1) == 1 != r.FromSecond ? ofX : ofSecond;
                }
            }
        }

        if (problem.Dependence is { } dependence)
        {
            MixScores(dependence, pair, plan, start, count);
        }
    }

    private void MixScores(ScoreDependence dependence, int pair, PairRows plan, int start, int count)
    {
        for (int row = 0; row < count; row++)
        {
            PairRows.Row r = plan.Rows[start + row];
            for (int m = 0; m < keptScores.Length; m++)
            {
                (double ofX, double ofSecond) = (x.Scores[m][pair], second.Scores[m][pair]);
                (keptScores[m], otherScores[m]) = r.FromSecond ? (ofSecond, ofX) : (ofX, ofSecond);
            }

            dependence.Fill(r.Kept, keptScores, otherScores, rowScores, regressions);
            for (int m = 0; m < rowScores.Length; m++)
            {
                mixedScores[m][row] = rowScores[m];
            }
        }

        for (int m = 0; m < mixedScores.Length; m++)
        {
            sample.FromScores(m, mixedScores[m], count, mixed);
        }
    }

    private sealed record Base(double[][] Values, double[][] Scores);
}
