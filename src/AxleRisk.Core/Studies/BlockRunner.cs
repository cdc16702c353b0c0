using System.Runtime.ExceptionServices;

namespace AxleRisk.Core.Studies;

/// <summary>How a study is run; nothing here changes a digit of its result, except that a cancelled run ends early.</summary>
public sealed record RunOptions
{
    /// <summary>The number of threads; all cores unless set.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>Told the number of evaluations done, from any thread.</summary>
    public Action<long>? Progress { get; init; }

    /// <summary>Ends the run after the blocks under way, or inside them where a block is long.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>With whom the work is shared; null where this run does all of it.</summary>
    public IWorkShare? Share { get; init; }
}

/// <summary>What a run that keeps a result a block gave: the results of the blocks from the first on, without a gap.</summary>
/// <param name="Blocks">The results in the order of the blocks.</param>
/// <param name="Rows">The number of rows behind them.</param>
/// <param name="IsPartial">Whether the run was cancelled before its end.</param>
internal sealed record BlockRun<T>(IReadOnlyList<T> Blocks, long Rows, bool IsPartial);

/// <summary>
/// Runs blocks of work on all cores. Threads take the next block as they come free. Results must not depend on which thread
/// did which block: a worker's sums are either exact or kept block by block.
/// </summary>
internal static class BlockRunner
{
    /// <summary>One worker a thread.</summary>
    public static TWorker[] CreateWorkers<TWorker>(RunOptions options, long blocks, Func<TWorker> create) =>
        [.. Enumerable.Range(0, (int)Math.Clamp(blocks, 1, options.Threads)).Select(_ => create())];

    /// <summary>
    /// Runs <paramref name="work"/> over the rows 0 to <paramref name="rows"/> - 1 in blocks of <paramref name="blockSize"/> and
    /// keeps its results.
    /// </summary>
    /// <param name="rows">The number of rows.</param>
    /// <param name="blockSize">Rows a block.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="createWorker">Makes one thread's buffers.</param>
    /// <param name="work">
    /// From buffers, first row and number of rows to the block's result; on a cancellation it may give its block up by an
    /// <see cref="OperationCanceledException"/>.
    /// </param>
    public static BlockRun<TResult> Run<TWorker, TResult>(
        long rows, int blockSize, RunOptions options, Func<TWorker> createWorker, Func<TWorker, long, int, TResult> work)
    {
        long blocks = (rows + blockSize - 1) / blockSize;
        var results = new TResult[blocks];
        long rowsDone = 0;
        long end = Run(CreateWorkers(options, blocks, createWorker), 0, blocks, (worker, block) =>
        {
            long first = block * blockSize;
            int count = (int)Math.Min(blockSize, rows - first);
            results[block] = work(worker, first, count);
            long soFar = Interlocked.Add(ref rowsDone, count);
            options.Progress?.Invoke(soFar);
        }, options.Cancellation);
        return new BlockRun<TResult>(new ArraySegment<TResult>(results, 0, (int)end), Math.Min(end * blockSize, rows), end < blocks);
    }

    /// <summary>
    /// The same with numbers as results, where the work may be shared with other runs (<see cref="IWorkShare"/>); then nothing is partial.
    /// </summary>
    public static BlockRun<double[]> RunShared<TWorker>(
        long rows, int blockSize, RunOptions options, Func<TWorker> createWorker, Func<TWorker, long, int, double[]> work) =>
        options.Share is null ? Run(rows, blockSize, options, createWorker, work)
            : new BlockRun<double[]>(Shared(options, (rows + blockSize - 1) / blockSize, (first, end) =>
                Run(Math.Min(rows, end * blockSize) - (first * blockSize), blockSize, options, createWorker, (worker, from, count) =>
                    work(worker, from + (first * blockSize), count)).Blocks), rows, false);

    /// <summary>The rows of a pass over blocks, done here or shared.</summary>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    /// <exception cref="PartDoneException">This run's share is done, and it has nothing else to do.</exception>
    public static IReadOnlyList<double[]> Shared(RunOptions options, long blocks, Func<long, long, IReadOnlyList<double[]>> work)
    {
        IReadOnlyList<double[]> Whole(long first, long end)
        {
            IReadOnlyList<double[]> rows = first < end ? work(first, end) : [];
            options.Cancellation.ThrowIfCancellationRequested();
            return rows;
        }

        return options.Share?.Pass(blocks, Whole) ?? Whole(0, blocks);
    }

    /// <summary>
    /// Runs <paramref name="work"/> on the blocks from <paramref name="first"/> up to but not including <paramref name="end"/>.
    /// </summary>
    /// <remarks>
    /// On a cancellation the work may give its block up by an <see cref="OperationCanceledException"/> if it keeps what it does
    /// block by block: a
    /// later block may have been done by then, and does not count.
    /// </remarks>
    /// <param name="workers">One thread's buffers each.</param>
    /// <param name="first">The first block.</param>
    /// <param name="end">The block after the last.</param>
    /// <param name="work">The work on a block.</param>
    /// <param name="cancellation">Ends the run.</param>
    /// <param name="isEnough">Asked after every block, on any thread: whether no further ones are begun; null for never.</param>
    /// <returns>The end of the blocks done: all from <paramref name="first"/> to it, without a gap; less than
    /// <paramref name="end"/> where the run was cancelled or it was enough.</returns>
    public static long Run<TWorker>(TWorker[] workers, long first, long end, Action<TWorker, long> work, CancellationToken cancellation,
        Func<bool>? isEnough = null)
    {
        long next = first - 1, givenUp = end;
        bool isEnding = false;
        var keeping = new Lock();
        ExceptionDispatchInfo? failure = null;
        Parallel.ForEach(workers, new ParallelOptions { MaxDegreeOfParallelism = workers.Length }, worker =>
        {
            try
            {
                while (failure is null && !Volatile.Read(ref isEnding) && !cancellation.IsCancellationRequested)
                {
                    long block = Interlocked.Increment(ref next);
                    if (block >= end)
                    {
                        return;
                    }

                    try
                    {
                        work(worker, block);
                        if (isEnough?.Invoke() ?? false)
                        {
                            Volatile.Write(ref isEnding, true);
                        }
                    }
                    catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
                    {
                        lock (keeping)
                        {
                            givenUp = Math.Min(givenUp, block);
                        }
                    }
                }
            }
            catch (Exception e)
            {
                Interlocked.CompareExchange(ref failure, ExceptionDispatchInfo.Capture(e), null);
            }
        });
        failure?.Throw();

        // Blocks are taken in order, and every one that was taken was finished or given up: up to the first of these what is done
        // has no gap.
        return Math.Clamp(next + 1, first, givenUp);
    }
}
