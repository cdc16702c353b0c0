namespace AxleRisk.Core.Analyses.Shares;

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
    private readonly Dictionary<UInt128, double[,]> regressions = [];
    private Base x = new([], []);
    private Base second = new([], []);

    public PairEvaluator(ShareProblem problem, int capacity)
    {
        this.problem = problem;
        this.capacity = capacity;
        sample = problem.CreateSample(capacity);
        int members = problem.Dependence?.Members.Length ?? 0;
        mixed = Arrays(problem.ColumnCount, capacity);
        mixedScores = Arrays(members, capacity);
        (keptScores, otherScores, rowScores) = (new double[members], new double[members], new double[members]);
    }

    /// <summary>The rows evaluated so far.</summary>
    public long Evaluations { get; private set; }

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

    /// <summary>The outputs of rows mixed of the pairs last drawn.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="outputs">Takes the outputs, by number and row.</param>
    public void Evaluate(ReadOnlySpan<MixedRow> rows, double[][] outputs)
    {
        Evaluations += rows.Length;
        for (int start = 0; start < rows.Length; start += capacity)
        {
            int count = Math.Min(capacity, rows.Length - start);
            Mix(rows.Slice(start, count));
            sample.Evaluate(mixed, count, outputs, start);
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

    private void Mix(ReadOnlySpan<MixedRow> rows)
    {
        for (int player = 0; player < problem.Columns.Length; player++)
        {
            foreach (int column in problem.Columns[player])
            {
                (double[] ofX, double[] ofSecond, double[] to) = (x.Values[column], second.Values[column], mixed[column]);
                for (int row = 0; row < rows.Length; row++)
                {
                    ref readonly MixedRow r = ref rows[row];
                    to[row] = (r.HalfOf(player) >> player & 1) == 1 ? ofX[r.Pair] : ofSecond[r.Pair];
                }
            }
        }

        if (problem.Dependence is { } dependence)
        {
            MixScores(dependence, rows);
        }
    }

    private void MixScores(ScoreDependence dependence, ReadOnlySpan<MixedRow> rows)
    {
        for (int row = 0; row < rows.Length; row++)
        {
            MixedRow r = rows[row];
            for (int m = 0; m < keptScores.Length; m++)
            {
                (double ofX, double ofSecond) = (x.Scores[m][r.Pair], second.Scores[m][r.Pair]);
                (keptScores[m], otherScores[m]) = r.KeepsSecond ? (ofSecond, ofX) : (ofX, ofSecond);
            }

            dependence.Fill(r.KeepsSecond ? ~r.FromX : r.FromX, keptScores, otherScores, rowScores, regressions);
            for (int m = 0; m < rowScores.Length; m++)
            {
                mixedScores[m][row] = rowScores[m];
            }
        }

        for (int m = 0; m < mixedScores.Length; m++)
        {
            sample.FromScores(m, mixedScores[m], rows.Length, mixed);
        }
    }

    private sealed record Base(double[][] Values, double[][] Scores);
}

/// <summary>A row mixed of the base rows x and x' of a pair.</summary>
/// <param name="Pair">The pair's place in its block.</param>
/// <param name="FromX">The players from x; the rest is from x'.</param>
/// <param name="KeepsSecond">Whether what is from x' is kept and the rest conditional on it, rather than the other way round; of
/// independent players it is the same.</param>
internal readonly record struct MixedRow(int Pair, UInt128 FromX, bool KeepsSecond)
{
    /// <summary>
    /// The 64 bits that a player's is among, at the player's number modulo 64 as a shift of 64 bits takes it: shifting all 128 takes
    /// several times as long.
    /// </summary>
    public ulong HalfOf(int player) => player < 64 ? (ulong)FromX : (ulong)(FromX >> 64);
}
