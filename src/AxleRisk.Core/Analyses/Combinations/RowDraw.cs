using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>The sample as drawn: each row's failure probabilities, and the rows of every planned range.</summary>
/// <param name="Rows">The rows.</param>
/// <param name="Bits">The rows of each planned range.</param>
/// <param name="IsPartial">Whether the run was ended early.</param>
internal sealed record DrawnRows(EventRows Rows, ulong[][] Bits, bool IsPartial);

/// <summary>Draws and evaluates the sample that is searched. Of a row only its failure probabilities and its ranges are kept.</summary>
internal sealed class RowDraw(LifeModel model, StudySettings settings, RangePlan ranges)
{
    private const int Groups = 64;
    private readonly BlockPlan plan = new(settings, model.Factors.ColumnNames.Length);
    private readonly double requiredKm = model.Scenario.RequiredKm;

    public DrawnRows Run(RunOptions options)
    {
        int rows = (int)settings.Evaluations;
        double[][] weights = Workspace.Columns(ranges.Chances.Count, rows);
        ulong[][] bits = [.. ranges.Ranges.Select(_ => RangeRows.NewBits(rows))];
        long done = 0;
        long end = BlockRunner.Run(
            BlockRunner.CreateWorkers(options, plan.Blocks, () => new Worker(model)), 0, plan.Blocks, (worker, block) =>
            {
                int count = Work(worker, block, weights, bits);
                long soFar = Interlocked.Add(ref done, count);
                options.Progress?.Invoke(soFar);
            }, options.Cancellation);
        int kept = end < plan.Blocks ? FirstRow(end) : rows;
        double[][] cut = kept == rows ? weights : [.. weights.Select(w => w[..kept])];
        return new DrawnRows(new EventRows(cut, GroupOfRows(kept), plan.Replicates > 1 ? plan.Replicates : Groups), bits,
            end < plan.Blocks);
    }

    /// <summary>Rows stand in the order of their blocks.</summary>
    private int FirstRow(long block) => (int)plan.RowsBefore(block);

    private byte[] GroupOfRows(int rows)
    {
        var group = new byte[rows];
        for (long block = 0; block < plan.Blocks && FirstRow(block) < rows; block++)
        {
            group.AsSpan(FirstRow(block), plan[block].Rows).Fill((byte)plan[block].Replicate);
        }

        return plan.Replicates > 1 ? group : [.. Enumerable.Range(0, rows).Select(i => (byte)((long)i * Groups / rows))];
    }

    private int Work(Worker w, long block, double[][] weights, ulong[][] bits)
    {
        (int replicate, long first, int count) = plan[block];
        model.Draw(plan.PlanOf(replicate), settings.Seed, plan.StreamOf(replicate), first, count, w.Workspace, w.Values);
        model.Evaluate(w.Values, count, w.Workspace);
        int at = FirstRow(block);
        int modes = model.Modes.Modes.Length;
        Span<double> start = stackalloc double[modes];
        Span<double> used = stackalloc double[modes];
        Span<double> fails = stackalloc double[weights.Length];
        if (ranges.IsConditional)
        {
            model.FillLimits(w.Values, count, w.Limits);
        }

        for (int i = 0; i < count; i++)
        {
            if (ranges.IsConditional)
            {
                FailureChances.FillUsed(w.Workspace, i, requiredKm, used);
                ranges.Chances.Fill(start, used, w.Limits.AsSpan(i * modes, modes), w.Values, i, fails);
            }
            else
            {
                fails[0] = w.Workspace.LifeKm[i] < requiredKm ? 1 : 0;
            }

            for (int subset = 0; subset < fails.Length; subset++)
            {
                weights[subset][at + i] = fails[subset];
            }
        }

        for (int r = 0; r < bits.Length; r++)
        {
            PlannedRange range = ranges.Ranges[r];
            for (int i = 0; i < count; i++)
            {
                if (range.Has(w.Workspace.Unit, w.Values, i))
                {
                    // Two blocks may share a word.
                    Interlocked.Or(ref bits[r][(at + i) >> 6], 1UL << ((at + i) & 63));
                }
            }
        }

        return count;
    }

    private sealed class Worker(LifeModel model)
    {
        public Workspace Workspace { get; } = model.CreateWorkspace(StudySettings.BlockSize);

        public double[][] Values { get; } = model.CreateColumns(StudySettings.BlockSize);

        public double[] Limits { get; } = new double[StudySettings.BlockSize * model.Modes.Modes.Length];
    }
}
