using AxleRisk.Core.Distributions;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// Draws and evaluates two-level samples. A column's numbers go by its name, the replicate and, for what differs between
/// vehicles, the outer draw: samples of changed designs share them as long as they have the same columns in the same places.
/// </summary>
/// <param name="plan">How the sample is divided.</param>
/// <param name="options">Threads, progress (evaluations of one sample), cancellation.</param>
internal sealed class FleetDraw(NestedPlan plan, RunOptions options)
{
    /// <summary>The stream of what an owner drives.</summary>
    public const string DistanceStream = "fleet.distance_km_per_year";

    /// <summary>The number of evaluations of all samples together.</summary>
    public long Evaluations { get; private set; }

    /// <summary>Draws one sample.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="kmPerYear">What vehicles drive in a year; null where it does not matter.</param>
    /// <param name="change">Changes the drawn factor values before they are evaluated; null to leave them.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public FleetSample Draw(LifeModel model, Value? kmPerYear = null, Action<double[][], int>? change = null)
    {
        int block = Math.Min(plan.InnerOfPart, StudySettings.BlockSize);
        int blocksOfPart = (plan.InnerOfPart + block - 1) / block;
        bool[] isShared = SharedColumns(model.Factors);
        double[][][] shared = [.. Enumerable.Range(0, NestedPlan.Replicates).Select(r => DrawShared(model.Factors, isShared, r))];
        FleetVehicles kept = FleetVehicles.Of(model, plan);
        double[][] lnKm = kmPerYear is null ? [] : Workspace.Columns(plan.Draws, plan.Inner);
        long before = Evaluations;
        long done = 0;
        long blocks = (long)plan.Draws * plan.Parts * blocksOfPart;
        var workers = BlockRunner.CreateWorkers(options, blocks,
            () => (Space: model.CreateWorkspace(block), Values: model.CreateColumns(block)));

        (int Draw, int Part, int First, int Rows, int At) Place(long number)
        {
            (long ofAll, long blockOfPart) = Math.DivRem(number, blocksOfPart);
            (int draw, int part) = ((int)(ofAll / plan.Parts), (int)(ofAll % plan.Parts));
            int first = (int)blockOfPart * block;
            return (draw, part, first, Math.Min(block, plan.InnerOfPart - first), (part * plan.InnerOfPart) + first);
        }

        void Work((Workspace Space, double[][] Values) worker, long number)
        {
            (int draw, int part, int first, int rows, int at) = Place(number);
            string vehicles = part == 0 ? $"vehicles{draw}" : $"vehicles{draw}/second";
            FillUnit(model.Factors, isShared, shared[draw / plan.Outer], draw, vehicles, first, rows, worker.Space.Unit);
            model.Factors.Map(worker.Space.Unit, worker.Values, rows);
            change?.Invoke(worker.Values, rows);
            model.Evaluate(worker.Values, rows, worker.Space);
            kept.Keep(draw, at, rows, worker.Space, worker.Values);
            if (kmPerYear is not null)
            {
                FillDistances(kmPerYear, isShared.Length, vehicles, first, lnKm[draw].AsSpan(at, rows));
            }

            options.Progress?.Invoke(before + Interlocked.Add(ref done, rows));
        }

        if (options.Share is null)
        {
            BlockRunner.Run(workers, 0, blocks, Work, options.Cancellation);
            options.Cancellation.ThrowIfCancellationRequested();
        }
        else
        {
            Exchange();
        }

        void Exchange()
        {
            IReadOnlyList<double[]> all = BlockRunner.Shared(options, blocks, (from, to) =>
            {
                BlockRunner.Run(workers, from, to, Work, options.Cancellation);
                options.Cancellation.ThrowIfCancellationRequested();
                return [.. Enumerable.Range(0, (int)(to - from)).Select(i => Place(from + i)).Select(p => (double[])
                    [.. kept.NumbersOf(p.Draw, p.At, p.Rows), .. lnKm.Length == 0 ? [] : lnKm[p.Draw].AsSpan(p.At, p.Rows)])];
            });
            for (int number = 0; number < all.Count; number++)
            {
                (int draw, _, _, int rows, int at) = Place(number);
                int own = all[number].Length - (lnKm.Length == 0 ? 0 : rows);
                kept.Put(draw, at, rows, all[number].AsSpan(0, own));
                if (lnKm.Length > 0)
                {
                    all[number].AsSpan(own).CopyTo(lnKm[draw].AsSpan(at));
                }
            }
        }

        Evaluations += plan.Rows;
        return new FleetSample(plan, kept, lnKm, options.Threads);
    }

    private static bool[] SharedColumns(FactorSet factors) =>
        [.. factors.Factors.SelectMany(f => Enumerable.Repeat(NestedPlan.IsShared(f), f.ColumnNames.Length))];

    private double[][] DrawShared(FactorSet factors, bool[] isShared, int replicate)
    {
        var outer = SamplingPlan.FromName(plan.Settings.Sampling, plan.Outer);
        double[][] unit = Workspace.Columns(isShared.Length, plan.Outer);
        for (int column = 0; column < isShared.Length; column++)
        {
            if (isShared[column])
            {
                outer.Fill(new StreamKey(plan.Settings.Seed, $"{factors.ColumnNames[column]}/fleet{replicate}"), column, 0, unit[column]);
            }
        }

        return unit;
    }

    private void FillUnit(FactorSet factors, bool[] isShared, double[][] shared, int draw, string vehicles, int first, int rows,
        double[][] unit)
    {
        var inner = SamplingPlan.FromName(plan.Settings.Sampling, plan.InnerOfPart);
        for (int column = 0; column < isShared.Length; column++)
        {
            if (isShared[column])
            {
                unit[column].AsSpan(0, rows).Fill(shared[column][draw % plan.Outer]);
            }
            else
            {
                inner.Fill(new StreamKey(plan.Settings.Seed, $"{factors.ColumnNames[column]}/{vehicles}"), column, first,
                    unit[column].AsSpan(0, rows));
            }
        }
    }

    private void FillDistances(Value kmPerYear, int column, string vehicles, int first, Span<double> lnKm)
    {
        if (kmPerYear is not Value.Uncertain { Distribution: Distribution owners })
        {
            lnKm.Fill(Math.Log(kmPerYear.Nominal));
            return;
        }

        SamplingPlan.FromName(plan.Settings.Sampling, plan.InnerOfPart)
            .Fill(new StreamKey(plan.Settings.Seed, $"{DistanceStream}/{vehicles}"), column, first, lnKm);
        owners.Quantiles(lnKm, lnKm);
        for (int i = 0; i < lnKm.Length; i++)
        {
            lnKm[i] = Math.Log(lnKm[i]);
        }
    }
}
