using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// A risk study under way: what is known after the blocks done so far. It advances in rounds whose ends depend on nothing but
/// their number, so that a study that stops when its answer is good enough stops at the same place everywhere.
/// </summary>
internal sealed class RiskStudy
{
    /// <summary>The first round's end, in blocks; each later round doubles it until the longest.</summary>
    private const long FirstRound = 16;

    /// <summary>
    /// From here on a round is this many blocks, or <see cref="RoundPart"/> of what is done: a number of rounds that grows with
    /// the logarithm alone.
    /// </summary>
    private const long LongRound = 1024;

    private const long RoundPart = 8;

    private readonly LifeModel model;
    private readonly StudySettings settings;
    private readonly BlockPlan plan;
    private readonly long firstBlock;
    private readonly long endBlock;
    private readonly LifeSummary[] summaries;
    private long nextBlock;

    public RiskStudy(LifeModel model, StudySettings settings, StudyPart part)
    {
        this.model = model;
        this.settings = settings;
        plan = new BlockPlan(settings, model.Factors.ColumnNames.Length);
        firstBlock = nextBlock = plan.Blocks * (part.Number - 1) / part.Of;
        endBlock = plan.Blocks * part.Number / part.Of;
        summaries = [.. Enumerable.Range(0, plan.Replicates).Select(_ => RiskTally.NewSummary(model))];
    }

    /// <summary>The state so far; it does not change when the study goes on.</summary>
    public RiskState State => new(
        settings, firstBlock, endBlock, nextBlock, [.. nextBlock < endBlock ? summaries.Select(s => s.Copy()) : summaries]);

    /// <summary>Whether the study was ended by cancellation.</summary>
    public bool IsPartial { get; private set; }

    /// <summary>Takes over a state of the same part of the same study.</summary>
    /// <exception cref="StudyException">It is another study's or another part's.</exception>
    public void GoOnFrom(RiskState state)
    {
        if (state.Settings != settings || state.FirstBlock != firstBlock || state.EndBlock != endBlock)
        {
            throw new StudyException("the state belongs to a study with other settings or to another part");
        }

        nextBlock = state.NextBlock;
        for (int r = 0; r < summaries.Length; r++)
        {
            summaries[r].Add(state.Replicates[r]);
        }
    }

    /// <summary>Runs to the last block, until <paramref name="afterRound"/> says that it is enough, or until cancelled.</summary>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="isDue">Asked after every block, on any thread: whether the round ends with those under way; null for rounds whose ends
    /// depend on nothing but their number.</param>
    /// <param name="afterRound">Asked after every round; null where nobody looks before the end: then all is one round, and no
    /// thread waits for another.</param>
    public void Run(RunOptions options, Func<bool>? isDue, Func<RiskStudy, bool>? afterRound)
    {
        RiskTally[] workers = BlockRunner.CreateWorkers(options, endBlock - firstBlock, () => new RiskTally(model, settings.Seed, plan));
        if (options.Share is not null)
        {
            RunShared(workers, options);
            return;
        }

        long rows = summaries.Sum(s => s.Evaluations);
        bool enough = false;
        while (nextBlock < endBlock && !IsPartial && !enough)
        {
            long end = afterRound is null || isDue is not null ? endBlock
                : Math.Min(endBlock, firstBlock + NextEnd(nextBlock - firstBlock));
            nextBlock = BlockRunner.Run(workers, nextBlock, end, (worker, block) =>
            {
                long soFar = Interlocked.Add(ref rows, worker.Work(block));
                options.Progress?.Invoke(soFar);
            }, options.Cancellation, isDue);
            IsPartial = nextBlock < end && options.Cancellation.IsCancellationRequested;
            Collect(workers, options.Threads, goesOn: nextBlock < endBlock && !IsPartial);
            enough = afterRound?.Invoke(this) ?? false;
        }
    }

    // A share is a summary of each replicate. Whoever shares the work waits for all of it: there is no round to be looked at.
    private void RunShared(RiskTally[] workers, RunOptions options)
    {
        long evaluations = 0;
        IReadOnlyList<double[]> all = BlockRunner.Shared(options, plan.Blocks, (from, to) =>
        {
            BlockRunner.Run(workers, from, to, (worker, block) =>
            {
                long soFar = Interlocked.Add(ref evaluations, worker.Work(block));
                options.Progress?.Invoke(soFar);
            }, options.Cancellation);
            Array.ForEach(summaries, s => s.Clear());
            Collect(workers, options.Threads, goesOn: true);
            return [.. summaries.Select(SummaryNumbers.Of)];
        });
        Array.ForEach(summaries, s => s.Clear());
        foreach ((int row, double[] numbers) in all.Index())
        {
            SummaryNumbers.Add(summaries[row % summaries.Length], numbers);
        }

        nextBlock = endBlock;
    }

    private static long NextEnd(long done)
    {
        long end = FirstRound;
        while (end <= done)
        {
            end += Math.Min(end, Math.Max(LongRound, end / RoundPart));
        }

        return end;
    }

    /// <summary>Moves what the workers have summed up into the study: whole numbers, so that their order leaves no trace.</summary>
    private void Collect(RiskTally[] workers, int threads, bool goesOn) =>
        Parallel.For(0, summaries.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, r =>
        {
            foreach (RiskTally worker in workers)
            {
                if (worker.Summaries[r] is { Evaluations: > 0 } part)
                {
                    summaries[r].Add(part);
                    if (goesOn)
                    {
                        part.Clear();
                    }
                }
            }
        });
}
