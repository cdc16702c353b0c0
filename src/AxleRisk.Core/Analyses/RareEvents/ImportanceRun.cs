using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// Importance sampling of one limit state that can be extended: the failure probability is the mean of
/// P(fail | u) times nominal density over sampling density. Where the state has a normal part, P(fail | u) is exact
/// (conditional Monte Carlo); otherwise it is 0 or 1. All sums are in units of <see cref="Unit"/>, so that squares of
/// probabilities down to 1e-300 stay numbers.
/// </summary>
internal sealed class ImportanceRun(LimitState state, NormalMixture mixture, ulong seed, string stream)
{
    private const int BlockSize = StudySettings.BlockSize;

    /// <summary>The first-order failure probability of the centres: what the terms are divided by.</summary>
    public double Unit => mixture.FirstOrder;

    /// <summary>Count, sum and sum of squares of the weighted failure probabilities.</summary>
    public PowerSums Sums { get; private set; }

    /// <summary>The greatest single term of the sum.</summary>
    public double Largest { get; private set; }

    /// <summary>The sample it belongs to, in joint form (<see cref="LimitState.Joint"/>); null without failure.</summary>
    public double[]? Heaviest { get; private set; }

    /// <summary>
    /// Adds samples, rounded up to whole blocks, numbered on from those before: the digits depend on seed, stream and sample
    /// number alone. True unless cancelled on the way.
    /// </summary>
    public bool Extend(long rows, RunOptions options)
    {
        long done = Sums.Count;
        BlockRun<Block> run = BlockRunner.Run(
            (rows + BlockSize - 1) / BlockSize * BlockSize, BlockSize, options, CreateWorker, (w, first, count) =>
                Work(w, done + first, count));
        foreach (Block block in run.Blocks)
        {
            Sums = Sums.Plus(block.Sums);
            if (block.Largest > Largest)
            {
                (Largest, Heaviest) = (block.Largest, block.Heaviest);
            }
        }

        return !run.IsPartial;
    }

    private Worker CreateWorker() => new(Workspace.Columns(state.Dimension, BlockSize), new double[BlockSize], new double[BlockSize]);

    private Block Work(Worker worker, long first, int count)
    {
        (double[][] u, double[] weight, double[] c) = worker;
        mixture.Draw(seed, stream, first, count, u, weight);
        state.Evaluate(u, count, c);
        PowerSums sums = default;
        (double largest, int heaviest) = (0, -1);
        for (int row = 0; row < count; row++)
        {
            double term = weight[row] * FailureProbability(c[row]) / Unit;
            sums = sums.Plus(term);
            (largest, heaviest) = term > largest ? (term, row) : (largest, heaviest);
        }

        return new Block(sums, largest, heaviest < 0 ? null : Joint(PointVectors.Row(u, heaviest), c[heaviest]));
    }

    private double FailureProbability(double c) =>
        state.Sigma > 0 ? StandardNormal.Upper(c / state.Sigma) : c <= 0 ? 1 : 0;

    /// <summary>The sample with the likeliest z among those that fail with it.</summary>
    private double[] Joint(double[] u, double c) => state.Sigma > 0 ? [.. u, Math.Min(0, -c / state.Sigma)] : u;

    private sealed record Worker(double[][] U, double[] Weight, double[] C);

    private sealed record Block(PowerSums Sums, double Largest, double[]? Heaviest);
}
