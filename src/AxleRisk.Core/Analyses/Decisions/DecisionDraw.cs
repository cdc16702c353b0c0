using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Decisions;

/// <summary>
/// Two-level samples of several scenarios by common random numbers: an outer draw is one state of what is unknown, the same in all of
/// them, its inner draws are vehicles, the same too. The first scenario's is the sample that a fleet of it has.
/// </summary>
/// <param name="models">The scenarios made ready; the first is the one as it is.</param>
/// <param name="plan">How the samples are divided.</param>
/// <param name="seed">The seed.</param>
internal sealed class DecisionDraw(LifeModel[] models, NestedPlan plan, ulong seed)
{
    private readonly CommonDraw common = new(models);

    private IReadOnlyList<string> Names => common.Names;

    // The distance that an owner drives has the dimension behind the first scenario's columns, as in a fleet.
    private int Own => models[0].Factors.ColumnNames.Length;

    /// <summary>The dimensions that a plan needs.</summary>
    public int Dimensions => Names.Count + 2;

    /// <summary>Draws and evaluates them.</summary>
    /// <param name="kmPerYear">What vehicles drive in a year; null where it does not matter.</param>
    /// <param name="options">Threads, progress (in evaluations of all scenarios), cancellation.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public FleetSample[] Draw(Value? kmPerYear, RunOptions options)
    {
        int block = Math.Min(plan.InnerOfPart, StudySettings.BlockSize);
        int blocksOfPart = (plan.InnerOfPart + block - 1) / block;
        double[][][] shared = [.. Enumerable.Range(0, NestedPlan.Replicates).Select(DrawShared)];
        FleetVehicles[] kept = [.. models.Select(m => FleetVehicles.Of(m, plan))];
        double[][] lnKm = kmPerYear is null ? [] : Workspace.Columns(plan.Draws, plan.Inner);
        long blocks = (long)plan.Draws * plan.Parts * blocksOfPart, done = 0;
        var workers = BlockRunner.CreateWorkers(options, blocks, () => new Worker(models, common, block));
        BlockRunner.Run(workers, 0, blocks, (worker, number) =>
        {
            (long ofAll, long blockOfPart) = Math.DivRem(number, blocksOfPart);
            (int draw, int part) = ((int)(ofAll / plan.Parts), (int)(ofAll % plan.Parts));
            int first = (int)blockOfPart * block;
            int rows = Math.Min(block, plan.InnerOfPart - first);
            int at = (part * plan.InnerOfPart) + first;
            string vehicles = part == 0 ? $"vehicles{draw}" : $"vehicles{draw}/second";
            Fill(worker, shared[draw / plan.Outer], draw, vehicles, first, rows);
            for (int m = 0; m < models.Length; m++)
            {
                common.Map(m, worker.Unit[m], worker.Coupled, worker.Spaces[m], worker.Values[m], rows);
                models[m].Evaluate(worker.Values[m], rows, worker.Spaces[m]);
                kept[m].Keep(draw, at, rows, worker.Spaces[m], worker.Values[m]);
            }

            if (kmPerYear is not null)
            {
                FillDistances(kmPerYear, vehicles, first, lnKm[draw].AsSpan(at, rows));
            }

            options.Progress?.Invoke(models.Length * Interlocked.Add(ref done, rows));
        }, options.Cancellation);
        options.Cancellation.ThrowIfCancellationRequested();
        return [.. kept.Select(vehicles => new FleetSample(plan, vehicles, lnKm, options.Threads))];
    }

    /// <summary>One value for each outer draw.</summary>
    public double[] OfDraws(Distribution distribution, string name)
    {
        var values = new double[plan.Draws];
        for (int replicate = 0; replicate < NestedPlan.Replicates; replicate++)
        {
            Span<double> some = values.AsSpan(replicate * plan.Outer, plan.Outer);
            PlanOf(plan.Outer).Fill(new StreamKey(seed, $"{name}/fleet{replicate}"), Names.Count + 1, 0, some);
            distribution.Quantiles(some, some);
        }

        return values;
    }

    private SamplingPlan PlanOf(int rows) => SamplingPlan.FromName(plan.Settings.Sampling, rows);

    private int DimensionOf(int place) => place < Own ? place : place + 1;

    private double[][] DrawShared(int replicate)
    {
        double[][] unit = Workspace.Columns(Names.Count, plan.Outer);
        for (int place = 0; place < Names.Count; place++)
        {
            PlanOf(plan.Outer).Fill(new StreamKey(seed, $"{Names[place]}/fleet{replicate}"), DimensionOf(place), 0, unit[place]);
        }

        return unit;
    }

    private void Fill(Worker worker, double[][] shared, int draw, string vehicles, int first, int rows)
    {
        SamplingPlan inner = PlanOf(plan.InnerOfPart);
        for (int place = 0; place < Names.Count; place++)
        {
            worker.Shared[place].AsSpan(0, rows).Fill(shared[place][draw % plan.Outer]);
            if (worker.Differs[place])
            {
                inner.Fill(new StreamKey(seed, $"{Names[place]}/{vehicles}"), DimensionOf(place), first, worker.Own[place].AsSpan(0, rows));
            }
        }
    }

    private void FillDistances(Value kmPerYear, string vehicles, int first, Span<double> lnKm)
    {
        if (kmPerYear is not Value.Uncertain { Distribution: Distribution owners })
        {
            lnKm.Fill(Math.Log(kmPerYear.Nominal));
            return;
        }

        PlanOf(plan.InnerOfPart).Fill(new StreamKey(seed, $"{FleetDraw.DistanceStream}/{vehicles}"), Own, first, lnKm);
        owners.Quantiles(lnKm, lnKm);
        for (int i = 0; i < lnKm.Length; i++)
        {
            lnKm[i] = Math.Log(lnKm[i]);
        }
    }

    /// <summary>One thread's buffers; what is unknown in one scenario may differ between vehicles in another.</summary>
    private sealed class Worker
    {
        public Worker(LifeModel[] models, CommonDraw common, int block)
        {
            Shared = Workspace.Columns(common.Columns, block);
            Own = Workspace.Columns(common.Columns, block);
            Coupled = Workspace.Columns(common.Columns, block);
            bool[][] isShared = [.. models.Select((_, m) => Enumerable.Range(0, common.Columns)
                .Select(place => common.FactorOf(m, place) is { } factor && NestedPlan.IsShared(factor)).ToArray())];
            Differs = [.. Enumerable.Range(0, common.Columns).Select(place => isShared.Any(s => !s[place]))];
            Unit = [.. isShared.Select(s => s.Select((x, place) => x ? Shared[place] : Own[place]).ToArray())];
            Spaces = [.. models.Select(m => m.CreateWorkspace(block))];
            Values = [.. models.Select(m => m.CreateColumns(block))];
        }

        public double[][] Shared { get; }

        public double[][] Own { get; }

        public double[][] Coupled { get; }

        public bool[] Differs { get; }

        public double[][][] Unit { get; }

        public Workspace[] Spaces { get; }

        public double[][][] Values { get; }
    }
}
