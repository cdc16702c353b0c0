using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>The vehicles of one block: their factors and what the trip as planned does to them.</summary>
/// <param name="Values">Factor values, by column and row.</param>
/// <param name="Start">What each mode of failure has used up before the trip, by row and mode.</param>
/// <param name="Legs">The same of each leg of the trip, by leg, row and mode.</param>
/// <param name="Limits">How much each can use up, as drawn, by row and mode.</param>
/// <param name="Group">The group of the jackknife, by row.</param>
/// <param name="Bits">The rows of each planned range, one bit a row.</param>
/// <param name="Reached">The probability of each to reach the start; of a vehicle that was seen, together with that.</param>
/// <param name="Seen">What they have to do with the vehicle that was seen; null where none was.</param>
internal sealed record TripBlock(
    double[][] Values, double[] Start, double[][] Legs, double[] Limits, byte[] Group, ulong[][] Bits, double[] Reached, SeenRows? Seen)
{
    public int Rows => Group.Length;

    public int Modes => Start.Length / Rows;

    public ReadOnlySpan<double> StartOf(int row) => Start.AsSpan(row * Modes, Modes);

    public ReadOnlySpan<double> LimitsOf(int row) => Limits.AsSpan(row * Modes, Modes);
}

/// <summary>The sampled vehicles of a trip, all kept: every question about the trip is put to the same vehicles.</summary>
/// <param name="Blocks">The vehicles, block by block.</param>
/// <param name="Rows">Their number.</param>
/// <param name="Groups">The number of groups of the jackknife.</param>
/// <param name="IsPartial">Whether the draw was ended early.</param>
internal sealed record TripSample(IReadOnlyList<TripBlock> Blocks, long Rows, int Groups, bool IsPartial)
{
    private const int IndependentGroups = 32;

    /// <summary>Draws and evaluates the vehicles.</summary>
    /// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
    /// <param name="trip">The legs of its trip, made ready.</param>
    /// <param name="ranges">The ranges whose rows are to be kept.</param>
    /// <param name="settings">Evaluations, seed, sampling plan.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="survival">How survival follows.</param>
    public static TripSample Draw(
        LifeModel whole, TripModel trip, RangePlan ranges, StudySettings settings, RunOptions options, TripSurvival survival)
    {
        var plan = new BlockPlan(settings, whole.Factors.ColumnNames.Length);
        int groups = GroupsOf(plan, settings);
        long rows = 0;
        BlockRun<TripBlock> run = BlockRunner.Run(
            plan.Blocks, 1, options with { Progress = null }, () => new Worker(whole, trip, survival.OfThread()), (worker, block, _) =>
            {
                TripBlock drawn = worker.Draw(plan, settings, block, ranges.Ranges, row => GroupOf(plan, groups, settings, block, row));
                long soFar = Interlocked.Add(ref rows, drawn.Rows);
                options.Progress?.Invoke(soFar);
                return drawn;
            });
        return new TripSample(run.Blocks, run.Blocks.Sum(b => (long)b.Rows), groups, run.IsPartial);
    }

    /// <summary>The number of groups of the jackknife: the replicates, or parts of independent evaluations.</summary>
    public static int GroupsOf(BlockPlan plan, StudySettings settings) =>
        plan.Replicates > 1 ? plan.Replicates : (int)Math.Min(IndependentGroups, settings.Evaluations);

    /// <summary>The group of a row of a block.</summary>
    public static byte GroupOf(BlockPlan plan, int groups, StudySettings settings, long block, int row) => plan.Replicates > 1
        ? (byte)plan[block].Replicate
        : (byte)((plan[block].First + row) * groups / settings.Evaluations);

    private sealed class Worker(LifeModel whole, TripModel trip, TripSurvival survival)
    {
        private readonly Workspace usual = whole.CreateWorkspace(StudySettings.BlockSize);
        private readonly TripWorkspace legs = trip.CreateWorkspace(StudySettings.BlockSize);

        public TripBlock Draw(BlockPlan plan, StudySettings settings, long block, ImmutableArray<PlannedRange> ranges,
            Func<int, byte> groupOf)
        {
            (int replicate, long first, int rows) = plan[block];
            double[][] values = Workspace.Columns(whole.Factors.ColumnNames.Length, rows);
            whole.Draw(plan.PlanOf(replicate), settings.Seed, plan.StreamOf(replicate), first, rows, usual, values);
            whole.Evaluate(values, rows, usual);
            var drawn = new TripBlock(
                values, new double[rows * trip.Modes], Workspace.Columns(trip.Legs, rows * trip.Modes), new double[rows * trip.Modes],
                [.. Enumerable.Range(0, rows).Select(groupOf)], [.. ranges.Select(_ => RangeRows.NewBits(rows))],
                new double[rows], survival.Seen?.Rows(usual, values, rows));
            whole.FillLimits(values, rows, drawn.Limits);
            trip.FillStart(values, rows, usual, drawn.Start);
            trip.Evaluate(values, rows, legs, drawn.Legs);
            for (int row = 0; row < rows; row++)
            {
                survival.Take(drawn.Seen, row);
                drawn.Reached[row] = survival.At(drawn.StartOf(row), drawn.LimitsOf(row));
            }

            for (int r = 0; r < ranges.Length; r++)
            {
                for (int row = 0; row < rows; row++)
                {
                    drawn.Bits[r][row >> 6] |= ranges[r].Has(usual.Unit, values, row) ? 1UL << (row & 63) : 0;
                }
            }

            return drawn;
        }
    }
}
