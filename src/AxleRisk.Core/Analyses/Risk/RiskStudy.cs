using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// A risk study under way: what is known after the blocks done so far. It advances in rounds whose ends depend on nothing but
/// their number, so that a study that stops when its answer is good enough stops at the same place everywhere.
/// </summary>
internal sealed class RiskStudy(LifeModel model, StudySettings settings)
{
    /// <summary>The first round's end, in blocks; each later round doubles it until the longest.</summary>
    private const long FirstRound = 16;

    /// <summary>The longest round, in blocks: short enough that little is lost between two checkpoints.</summary>
    private const long LongestRound = 1024;

    private readonly BlockPlan plan = new(settings);
    private readonly LifeSummary?[] summaries = new LifeSummary?[new BlockPlan(settings).Replicates];

    public LifeModel Model => model;

    public StudySettings Settings => settings;

    /// <summary>The blocks done, from the first on.</summary>
    public long BlocksDone { get; private set; }

    /// <summary>Whether the study was ended before its last block without its answer being good enough.</summary>
    public bool IsPartial { get; private set; }

    /// <summary>Runs until the last block, until <paramref name="isGoodEnough"/> says so after a round, or until cancelled.</summary>
    public void Run(RunOptions options, Func<FailureCurve, bool> isGoodEnough, RiskMethod method)
    {
        RiskTally[] workers = BlockRunner.CreateWorkers(options, plan.Blocks, () => new RiskTally(model, settings.Seed, plan));
        long rows = 0;
        while (BlocksDone < plan.Blocks && !IsPartial)
        {
            long end = Math.Min(plan.Blocks, NextEnd(BlocksDone));
            long done = BlockRunner.Run(workers, BlocksDone, end, (worker, block) =>
            {
                long soFar = Interlocked.Add(ref rows, worker.Work(block));
                options.Progress?.Invoke(soFar);
            }, options.Cancellation);
            IsPartial = done < end;
            BlocksDone = done;
            if (end == plan.Blocks || IsPartial)
            {
                break;
            }

            Collect(workers);
            if (isGoodEnough(Curve(method)))
            {
                break;
            }
        }

        Collect(workers);
    }

    /// <summary>All evaluations so far in one summary.</summary>
    public LifeSummary All()
    {
        var all = new LifeSummary(model.Scenario.Legs.Length);
        foreach (LifeSummary? summary in summaries)
        {
            if (summary is not null)
            {
                all.Add(summary);
            }
        }

        return all;
    }

    /// <summary>The failure curve of all evaluations so far.</summary>
    public FailureCurve Curve(RiskMethod method) => new(
        [.. summaries.OfType<LifeSummary>().Where(s => s.Evaluations > 0)], All(), method == RiskMethod.Conditional ? model.Scale : null);

    private static long NextEnd(long done)
    {
        long end = FirstRound;
        while (end <= done)
        {
            end += Math.Min(end, LongestRound);
        }

        return end;
    }

    /// <summary>Moves what the workers have summed up into the study.</summary>
    private void Collect(RiskTally[] workers)
    {
        foreach (RiskTally worker in workers)
        {
            for (int r = 0; r < summaries.Length; r++)
            {
                if (worker.Summaries[r] is { } part)
                {
                    (summaries[r] ??= new LifeSummary(model.Scenario.Legs.Length)).Add(part);
                    worker.Summaries[r] = null;
                }
            }
        }
    }
}
