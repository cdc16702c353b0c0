using System.Collections.Concurrent;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Inspections;

/// <summary>
/// Vehicles drawn once and kept, for schedules of looks to be tried on: independent groups of them, whose sums have the intervals.
/// </summary>
internal sealed class InspectionRows
{
    /// <summary>Independent groups: 15 degrees of freedom.</summary>
    public const int Groups = 16;

    private readonly LifeModel model;
    private readonly StudySettings settings;
    private readonly SeenVehicle seen;
    private readonly Block[] blocks;

    // Of the few vehicles that many schedules are tried on.
    private readonly ConcurrentDictionary<(DetectionCurve, CrackDepth), DetectionTable> tables = new();

    private InspectionRows(LifeModel model, StudySettings settings, SeenVehicle seen, Block[] blocks) =>
        (this.model, this.settings, this.seen, this.blocks) = (model, settings, seen, blocks);

    /// <summary>Where the way begins: the distance that the vehicle is known to have reached, km.</summary>
    public double FromKm => seen.WholeKm;

    /// <summary>The failure probability without a look by the end, of elsewhere; null for that of these vehicles.</summary>
    public RiskHeadline? Unlooked { get; set; }

    /// <summary>The number of vehicles.</summary>
    public long Count => blocks.Sum(b => (long)b.Rows);

    /// <summary>Draws vehicles.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static InspectionRows Draw(LifeModel model, StudySettings settings, RunOptions options)
    {
        int ofGroup = (int)Math.Max(16, settings.Evaluations / Groups);
        int perGroup = (ofGroup + StudySettings.BlockSize - 1) / StudySettings.BlockSize;
        var plan = SamplingPlan.FromName(settings.Sampling, ofGroup);
        var seen = new SeenVehicle(model, model.Scenario.Evidence is { IsOfWhole: true } evidence ? evidence : Evidence.None);
        long done = 0;
        BlockRun<Block> run = BlockRunner.Run(Groups * perGroup, 1, options with { Progress = null }, () => 0, (_, place, _) =>
        {
            int group = (int)(place % Groups), first = (int)(place / Groups) * StudySettings.BlockSize;
            int rows = Math.Min(StudySettings.BlockSize, ofGroup - first);
            var block = new Block(model, group, first, rows);
            model.Draw(plan, settings.Seed, Name(group), first, rows, block.Space, block.Values);
            model.Evaluate(block.Values, rows, block.Space);
            if (!model.Chances.IsExact)
            {
                model.FillLimits(block.Values, rows, block.Limits);
            }

            block.Seen = seen.Rows(block.Space, block.Values, rows);
            options.Progress?.Invoke(Interlocked.Add(ref done, rows));
            return block;
        });
        options.Cancellation.ThrowIfCancellationRequested();
        return new InspectionRows(model, settings, seen, [.. run.Blocks]);
    }

    /// <summary>The sums of a schedule by group.</summary>
    /// <param name="schedule">The schedule.</param>
    /// <param name="repairedLife">What a repaired detail can use up over what a new one can.</param>
    /// <param name="options">Threads, cancellation.</param>
    /// <param name="most">The most vehicles of a group to take.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public InspectionSums Sums(InspectionSchedule schedule, double repairedLife, RunOptions options, int most = int.MaxValue)
    {
        Block[] taken = [.. blocks.Where(b => b.First < most)];
        BlockRun<double[]> run = BlockRunner.RunShared(
            taken.Length, 1, options with { Progress = null }, () => new Worker(seen, schedule, most < int.MaxValue ? TableOf : null),
            (worker, place, _) => OfBlock(worker, taken[place], schedule, repairedLife, most));
        options.Cancellation.ThrowIfCancellationRequested();
        var sums = new CompensatedSum[Groups][];
        for (int group = 0; group < Groups; group++)
        {
            sums[group] = new CompensatedSum[run.Blocks[0].Length];
        }

        for (int place = 0; place < taken.Length; place++)
        {
            CompensatedSum[] to = sums[taken[place].Group];
            for (int i = 0; i < to.Length; i++)
            {
                to[i].Add(run.Blocks[place][i]);
            }
        }

        return new InspectionSums(schedule, [.. sums.Select(g => Array.ConvertAll(g, s => s.Value))], Unlooked);
    }

    private DetectionTable TableOf(DetectionCurve look, CrackDepth depth) =>
        tables.GetOrAdd((look, depth), key => new DetectionTable(key.Item1, key.Item2));

    private static string Name(int group) => $"inspect{group}";

    private double[] OfBlock(Worker worker, Block block, InspectionSchedule schedule, double repairedLife, int most)
    {
        InspectionChain chain = worker.Chain;
        int points = schedule.Points.Length, rows = Math.Min(block.Rows, most - block.First);
        bool isExact = model.Chances.IsExact;
        if (!isExact)
        {
            DrawRepaired(worker, block, rows, schedule);
        }

        var sums = new double[(points * InspectionSums.Kinds) + 1];
        for (int row = 0; row < rows; row++)
        {
            ReadOnlySpan<double> limits = isExact ? [] : block.LimitsOf(row), whole = block.Seen!.UsedOf(row)[seen.Looks.Length..];
            worker.OfRow.Take(block.Seen, row);
            for (int k = 0; k < points; k++)
            {
                double km = schedule.Points[k].Km;
                FailureChances.FillUsed(block.Space, row, km, worker.Used);
                chain.Used[k] = worker.Used[0];
                chain.OthersSurvive[k] = OthersSurvive(worker.Used, limits);
                chain.FromScratch[k + 1] = Math.Log(repairedLife)
                    + (isExact ? model.Scale.Mu : schedule.Points[k].Method is null ? 0 : Math.Log(worker.Repaired[k][row]));
                worker.Without[k] = worker.OfRow.Fails(whole, worker.Used, limits);
            }

            chain.FromScratch[0] = isExact ? model.Scale.Mu : Math.Log(limits[0]);
            (chain.WholeUsed, chain.OthersSurviveBefore) = (whole[0], OthersSurvive(whole, limits));
            chain.Weight = worker.OfRow.Weight(limits);
            chain.Fill(isExact ? model.Scale.Sigma : 0, block.Seen.Depths[row]);
            sums[^1] += chain.Whole;
            ReadOnlySpan<double[]> all =
                [worker.Without, chain.Fails, chain.Found, chain.Missed, chain.Unfound, chain.CleanFails, chain.Clean];
            for (int kind = 0; kind < InspectionSums.Kinds; kind++)
            {
                for (int k = 0; k < points; k++)
                {
                    sums[(kind * points) + k] += all[kind][k];
                }
            }
        }

        return sums;
    }

    // The limits of fatigue after repairs, each from vehicles of its own.
    private void DrawRepaired(Worker worker, Block block, int rows, InspectionSchedule schedule)
    {
        var plan = SamplingPlan.FromName(settings.Sampling, (int)Math.Max(16, settings.Evaluations / Groups));
        for (int k = 0; k < schedule.Points.Length; k++)
        {
            if (schedule.Points[k].Method is not null)
            {
                model.Draw(plan, settings.Seed, $"{Name(block.Group)}/repaired{k}", block.First, rows, worker.Space!, worker.Values!);
                model.FillScale(worker.Values!, rows, worker.Repaired[k]);
            }
        }
    }

    private double OthersSurvive(ReadOnlySpan<double> used, ReadOnlySpan<double> limits)
    {
        double survival = 1;
        for (int mode = 1; mode < used.Length; mode++)
        {
            survival *= limits.IsEmpty ? model.Chances.Of(mode).Survival(used[mode]) : used[mode] > limits[mode] ? 0 : 1;
        }

        return survival;
    }

    private sealed class Worker
    {
        public Worker(SeenVehicle seen, InspectionSchedule schedule, Func<DetectionCurve, CrackDepth, DetectionTable>? tableOf)
        {
            LifeModel model = seen.Model;
            int points = schedule.Points.Length;
            OfRow = new SeenChances(seen, !model.Chances.IsExact);
            Chain = tableOf is null ? new InspectionChain(points) { Seen = OfRow.Fatigue }
                : new InspectionChain(points) { Seen = OfRow.Fatigue, TableOf = tableOf };
            for (int k = 0; k < points; k++)
            {
                Chain.Looks[k] = schedule.Points[k].Method?.Detection;
            }

            Used = new double[model.Modes.Modes.Length];
            Without = new double[points];
            if (!model.Chances.IsExact)
            {
                Space = model.CreateWorkspace(StudySettings.BlockSize);
                Values = model.CreateColumns(StudySettings.BlockSize);
                Repaired = Workspace.Columns(points, StudySettings.BlockSize);
            }
        }

        public InspectionChain Chain { get; }

        public SeenChances OfRow { get; }

        public double[] Used { get; }

        public double[] Without { get; }

        public Workspace? Space { get; }

        public double[][]? Values { get; }

        public double[][] Repaired { get; } = [];
    }

    private sealed class Block(LifeModel model, int group, int first, int rows)
    {
        private readonly int modes = model.Modes.Modes.Length;

        public int Group => group;

        public int First => first;

        public int Rows => rows;

        public Workspace Space { get; } = model.CreateWorkspace(rows);

        public double[][] Values { get; } = model.CreateColumns(rows);

        public double[] Limits { get; } = new double[rows * model.Modes.Modes.Length];

        public SeenRows? Seen { get; set; }

        public ReadOnlySpan<double> LimitsOf(int row) => Limits.AsSpan(row * modes, modes);
    }
}
