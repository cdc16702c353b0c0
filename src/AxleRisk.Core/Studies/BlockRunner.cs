namespace AxleRisk.Core.Studies;

/// <summary>How a study is run; nothing here changes a digit of its result, except that a cancelled run ends early.</summary>
public sealed record RunOptions
{
    /// <summary>The number of threads; all cores unless set.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>Told the number of rows done after every block, from any thread.</summary>
    public Action<long>? Progress { get; init; }

    /// <summary>Ends the run after the blocks under way.</summary>
    public CancellationToken Cancellation { get; init; }
}

/// <summary>What a run of blocks gave: the results of the blocks from the first on, without a gap.</summary>
/// <param name="Blocks">The results in the order of the blocks.</param>
/// <param name="Rows">The number of rows behind them.</param>
/// <param name="IsPartial">Whether the run was cancelled before its end.</param>
public sealed record BlockRun<T>(IReadOnlyList<T> Blocks, long Rows, bool IsPartial);

/// <summary>
/// Runs a study in fixed blocks of sample numbers on all cores. Threads take the next block as they come free; the
/// results are joined in the order of the blocks, so that the number of threads does not show in the digits.
/// </summary>
public static class BlockRunner
{
    /// <summary>Runs <paramref name="work"/> over the rows 0 to <paramref name="rows"/> - 1 in blocks of <paramref name="blockSize"/>.</summary>
    /// <param name="rows">The number of rows.</param>
    /// <param name="blockSize">Rows a block.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="createWorker">Makes one thread's buffers.</param>
    /// <param name="work">From buffers, first row and number of rows to the block's result.</param>
    public static BlockRun<TResult> Run<TWorker, TResult>(
        long rows, int blockSize, RunOptions options, Func<TWorker> createWorker, Func<TWorker, long, int, TResult> work)
    {
        long blocks = (rows + blockSize - 1) / blockSize;
        var results = new TResult[blocks];
        long next = -1;
        long done = 0;
        int threads = (int)Math.Clamp(blocks, 1, options.Threads);
        try
        {
            Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, _ =>
            {
                TWorker worker = createWorker();
                while (!options.Cancellation.IsCancellationRequested)
                {
                    long block = Interlocked.Increment(ref next);
                    if (block >= blocks)
                    {
                        return;
                    }

                    long first = block * blockSize;
                    int count = (int)Math.Min(blockSize, rows - first);
                    results[block] = work(worker, first, count);
                    long soFar = Interlocked.Add(ref done, count);
                    options.Progress?.Invoke(soFar);
                }
            });
        }
        catch (AggregateException e)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(e.InnerExceptions[0]);
        }

        // Every block that was taken was finished, and blocks are taken in order: what is done has no gap.
        long finished = Math.Min(next + 1, blocks);
        return new BlockRun<TResult>(new ArraySegment<TResult>(results, 0, (int)finished), done, finished < blocks);
    }
}
