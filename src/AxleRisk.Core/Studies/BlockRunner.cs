using System.Runtime.ExceptionServices;

namespace AxleRisk.Core.Studies;

/// <summary>How a study is run; nothing here changes a digit of its result, except that a cancelled run ends early.</summary>
public sealed record RunOptions
{
    /// <summary>The number of threads; all cores unless set.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>Told the number of evaluations done, from any thread.</summary>
    public Action<long>? Progress { get; init; }

    /// <summary>Ends the run after the blocks under way.</summary>
    public CancellationToken Cancellation { get; init; }
}

/// <summary>
/// Runs blocks of work on all cores. Threads take the next block as they come free. Results must not depend on which thread
/// did which block: a worker's sums are either exact or kept block by block.
/// </summary>
internal static class BlockRunner
{
    /// <summary>One worker a thread.</summary>
    public static TWorker[] CreateWorkers<TWorker>(RunOptions options, long blocks, Func<TWorker> create) =>
        [.. Enumerable.Range(0, (int)Math.Clamp(blocks, 1, options.Threads)).Select(_ => create())];

    /// <summary>Runs <paramref name="work"/> on the blocks from <paramref name="first"/> up to but not including <paramref name="end"/>.</summary>
    /// <returns>The end of the blocks done: all from <paramref name="first"/> to it, without a gap; less than <paramref name="end"/> where the run was cancelled.</returns>
    public static long Run<TWorker>(TWorker[] workers, long first, long end, Action<TWorker, long> work, CancellationToken cancellation)
    {
        long next = first - 1;
        ExceptionDispatchInfo? failure = null;
        Parallel.ForEach(workers, new ParallelOptions { MaxDegreeOfParallelism = workers.Length }, worker =>
        {
            try
            {
                while (failure is null && !cancellation.IsCancellationRequested)
                {
                    long block = Interlocked.Increment(ref next);
                    if (block >= end)
                    {
                        return;
                    }

                    work(worker, block);
                }
            }
            catch (Exception e)
            {
                Interlocked.CompareExchange(ref failure, ExceptionDispatchInfo.Capture(e), null);
            }
        });
        failure?.Throw();

        // Every block that was taken was finished, and blocks are taken in order: what is done has no gap.
        return Math.Clamp(next + 1, first, end);
    }
}
