using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>Shapley effects (Owen 2014; Song, Nelson and Staum 2016) of a problem, from replicates of pairs of base rows.</summary>
internal sealed class ShareRun
{
    /// <summary>Independent replicates, the groups of the jackknife.</summary>
    public const int Replicates = 32;

    /// <summary>Up to this many players every subset can be run.</summary>
    public const int MostExactPlayers = 13;

    /// <summary>The pairs of all subsets that bring shares to within one percentage point at a failure probability of 2 %.</summary>
    private const int ExactPairs = 20_480;

    /// <summary>
    /// The pairs of a replicate before the width of the shares is first looked at: enough for the look to be worth something.
    /// </summary>
    private const int PairsOfFirstRound = 512;

    /// <summary>
    /// A round aims below the width that is asked for, so that most runs end with the second: the fewer looks, the less do the
    /// intervals of those that end early by a chance estimate count.
    /// </summary>
    private const double Aim = 0.9;

    /// <summary>The least and the greatest growth from one round to the next.</summary>
    private const double LeastGrowth = 1.25, MostGrowth = 4;

    private const int RowsOfCall = StudySettings.BlockSize;
    private const int MostPairsOfBlock = 64;

    private readonly double[][][] sums;

    private ShareRun(double[][][] sums, bool allSubsets, long pairs, long evaluations, bool isPartial)
    {
        this.sums = sums;
        (IsAllSubsets, Pairs, Evaluations, IsPartial) = (allSubsets, pairs, evaluations, isPartial);
    }

    /// <summary>Whether every subset was run, rather than random orders.</summary>
    public bool IsAllSubsets { get; }

    /// <summary>Pairs of base rows; of random orders, also the number of orders and of their reverses.</summary>
    public long Pairs { get; }

    /// <summary>Evaluations spent.</summary>
    public long Evaluations { get; }

    /// <summary>Whether the run was cancelled.</summary>
    public bool IsPartial { get; }

    /// <summary>Half the width of the widest 95 % interval of a player's share of an output; infinite where one is unknown.</summary>
    public double WidestHalf =>
        Enumerable.Range(0, sums.Length).SelectMany(output => Enumerable.Range(0, sums[output].FirstOrDefault()?.Length ?? 0)
        .Select(player => Share(output, player)).Select(i => double.IsNaN(i.High) ? double.PositiveInfinity : (i.High - i.Low) / 2))
        .DefaultIfEmpty(double.PositiveInfinity).Max();

    /// <summary>The evaluations of all subsets where nobody says otherwise.</summary>
    public static long EvaluationsOfAllSubsets(ShareProblem problem) =>
        (long)(ExactPairs * ShareTally.EvaluationsOfPair(problem, allSubsets: true));

    /// <summary>Runs the pairs that fit into <paramref name="evaluations"/>, at least one pair a replicate.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="evaluations">The most evaluations.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="allSubsets">Whether every subset is run on each pair, rather than one random order.</param>
    /// <param name="halfWidth">Ends the run after the first round in which no share's 95 % interval is wider to either side; 0
    /// spends everything.</param>
    /// <param name="pairsOfFirstRound">The pairs of a replicate in the first round, a multiple of 64.</param>
    public static ShareRun Run(
        ShareProblem problem, long evaluations, ulong seed, RunOptions options, bool allSubsets = false, double halfWidth = 0,
            int pairsOfFirstRound = PairsOfFirstRound)
    {
        double ofPair = ShareTally.EvaluationsOfPair(problem, allSubsets);
        long most = Math.Max(1, (long)(evaluations / ofPair / Replicates));
        long pairsOfReplicate = halfWidth > 0 ? Math.Min(most, pairsOfFirstRound) : most;
        var tally = new ShareTally(problem, seed, allSubsets);
        PairEvaluator[] workers = BlockRunner.CreateWorkers(options, Blocks(most), () => new PairEvaluator(problem, RowsOfCall));
        double[][][] results = [];
        long[] evaluated = [];
        long pairsDone = 0, end = 0;
        while (true)
        {
            int from = (int)end;
            Array.Resize(ref results, (int)Blocks(pairsOfReplicate));
            Array.Resize(ref evaluated, results.Length);
            end = options.Share is null ? BlockRunner.Run(workers, from, results.Length, Work, options.Cancellation) : Exchange(from);
            var run = new ShareRun(
                Joined(problem, results.AsSpan(0, (int)end)), allSubsets, options.Share is null ? pairsDone : Replicates * pairsOfReplicate,
                evaluated.Sum(), end < results.Length);
            if (run.IsPartial || pairsOfReplicate == most || run.WidestHalf is var widest && widest <= halfWidth)
            {
                return run;
            }

            // In whole blocks, so that a round's blocks are those of any longer one.
            double growth = Math.Clamp(Math.Pow(widest / (Aim * halfWidth), 2), LeastGrowth, MostGrowth);
            pairsOfReplicate = Math.Min(most, (long)Math.Ceiling(growth * pairsOfReplicate / MostPairsOfBlock) * MostPairsOfBlock);
        }

        void Work(PairEvaluator worker, long block)
        {
            (int replicate, long first) = ((int)(block % Replicates), block / Replicates * MostPairsOfBlock);
            int count = (int)Math.Min(MostPairsOfBlock, pairsOfReplicate - first);
            long before = worker.Evaluations;
            results[block] = tally.Work(worker, replicate, first, count);
            evaluated[block] = worker.Evaluations - before;
            long soFar = Interlocked.Add(ref pairsDone, count);
            options.Progress?.Invoke((long)(soFar * ofPair));
        }

        // A row is a block's sums by output and player, and behind them the evaluations it took.
        int Exchange(int from)
        {
            IReadOnlyList<double[]> rows = BlockRunner.Shared(options, results.Length - from, (first, past) =>
            {
                BlockRunner.Run(workers, from + first, from + past, Work, options.Cancellation);
                options.Cancellation.ThrowIfCancellationRequested();
                return [.. Enumerable.Range(from + (int)first, (int)(past - first)).Select(b => (double[])
                    [.. results[b].SelectMany(of => of), evaluated[b]])];
            });
            for (int b = 0; b < rows.Count; b++)
            {
                results[from + b] = [.. rows[b][..^1].Chunk(problem.Players)];
                evaluated[from + b] = (long)rows[b][^1];
            }

            return results.Length;
        }
    }

    /// <summary>
    /// The share that a set of players has of the variance of an output, with its 95 % interval; NaN where nothing varies.
    /// </summary>
    public Interval Share(int output, params IReadOnlyCollection<int> players)
    {
        double Statistic(double[] s) => players.Sum(p => s[p]) / s.Sum();
        return sums[output].Length >= 2
            ? Jackknife.Estimate(sums[output], Statistic)
            : new(sums[output].Length == 1 ? Statistic(sums[output][0]) : double.NaN, double.NaN, double.NaN);
    }

    private static long Blocks(long pairsOfReplicate) => (pairsOfReplicate + MostPairsOfBlock - 1) / MostPairsOfBlock * Replicates;

    /// <summary>The sums by output, replicate and player.</summary>
    private static double[][][] Joined(ShareProblem problem, ReadOnlySpan<double[][]> blocks)
    {
        double[][][] joined =
            [.. Enumerable.Range(0, problem.Moments.Length).Select(_ => Workspace.Columns(Replicates, problem.Players))];
        for (int b = 0; b < blocks.Length; b++)
        {
            for (int m = 0; m < joined.Length; m++)
            {
                for (int p = 0; p < problem.Players; p++)
                {
                    joined[m][b % Replicates][p] += blocks[b][m][p];
                }
            }
        }

        int filled = Math.Min(Replicates, blocks.Length);
        return [.. joined.Select(j => j[..filled])];
    }
}
