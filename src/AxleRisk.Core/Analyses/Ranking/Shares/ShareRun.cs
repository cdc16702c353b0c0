using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking.Shares;

/// <summary>Shapley effects (Owen 2014; Song, Nelson and Staum 2016) of a problem, from replicates of pairs of base rows.</summary>
internal sealed class ShareRun
{
    /// <summary>Independent replicates, the groups of the jackknife.</summary>
    public const int Replicates = 32;

    /// <summary>Up to this many players every subset is run.</summary>
    public const int MostExactPlayers = 13;

    /// <summary>
    /// All subsets are run where there is enough to spend for this many pairs, which bring shares to within one percentage point
    /// at a failure probability of 2 %. With less to spend random orders give far narrower intervals.
    /// </summary>
    private const int ExactPairs = 20_480;

    /// <summary>What random orders are given; and all subsets of few factors, at least.</summary>
    private const long UsualEvaluations = 1_000_000;

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

    /// <summary>The evaluations to spend where nobody says otherwise.</summary>
    public static long DefaultEvaluations(ShareProblem problem) => problem.Players > MostExactPlayers ? UsualEvaluations
        : Math.Max(UsualEvaluations, (long)(ExactPairs * ShareTally.EvaluationsOfPair(problem, allSubsets: true)));

    /// <summary>
    /// Runs a problem with about <paramref name="evaluations"/> evaluations, at least one pair a replicate: all subsets of up
    /// to <see cref="MostExactPlayers"/> players where that is enough to spend, otherwise random orders.
    /// </summary>
    public static ShareRun Run(ShareProblem problem, long evaluations, ulong seed, RunOptions options) =>
        Run(problem, evaluations, seed, options, IsExact(problem, evaluations));

    /// <summary>The same by all subsets or by random orders.</summary>
    public static ShareRun Run(ShareProblem problem, long evaluations, ulong seed, RunOptions options, bool allSubsets)
    {
        double ofPair = ShareTally.EvaluationsOfPair(problem, allSubsets);
        long pairsOfReplicate = Math.Max(1, (long)(evaluations / ofPair / Replicates));
        long chunks = (pairsOfReplicate + MostPairsOfBlock - 1) / MostPairsOfBlock;
        var tally = new ShareTally(problem, seed, allSubsets);
        long pairsDone = 0;
        var results = new double[chunks * Replicates][][];
        PairEvaluator[] workers = BlockRunner.CreateWorkers(options, results.Length, () => new PairEvaluator(problem, RowsOfCall));
        long end = BlockRunner.Run(workers, 0, results.Length, (worker, block) =>
        {
            (int replicate, long first) = ((int)(block % Replicates), block / Replicates * MostPairsOfBlock);
            int count = (int)Math.Min(MostPairsOfBlock, pairsOfReplicate - first);
            results[block] = tally.Work(worker, replicate, first, count);
            long soFar = Interlocked.Add(ref pairsDone, count);
            options.Progress?.Invoke((long)(soFar * ofPair));
        }, options.Cancellation);
        return new(Joined(problem, results.AsSpan(0, (int)end)), allSubsets, pairsDone, workers.Sum(w => w.Evaluations), end < results.Length);
    }

    /// <summary>The share that a set of players has of the variance of an output, with its 95 % interval; NaN where nothing varies.</summary>
    public Interval Share(int output, params IReadOnlyCollection<int> players)
    {
        double Statistic(double[] s) => players.Sum(p => s[p]) / s.Sum();
        return sums[output].Length >= 2
            ? Jackknife.Estimate(sums[output], Statistic)
            : new(sums[output].Length == 1 ? Statistic(sums[output][0]) : double.NaN, double.NaN, double.NaN);
    }

    private static bool IsExact(ShareProblem problem, long evaluations) =>
        problem.Players <= MostExactPlayers
        && evaluations >= ExactPairs * ShareTally.EvaluationsOfPair(problem, allSubsets: true);

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
