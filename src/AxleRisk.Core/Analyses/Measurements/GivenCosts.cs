using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Measurements;

/// <summary>
/// The failure probability of each option given the value of one factor, all else drawn: nested sampling with the same draws at every
/// value and in every option, so that differences are surer than the figures.
/// </summary>
/// <param name="models">The options' scenarios made ready; the first is the one as it is.</param>
/// <param name="settings">Rows, seed, plan.</param>
internal sealed class GivenCosts(LifeModel[] models, StudySettings settings)
{
    /// <summary>Independent replicates: the groups of the jackknife.</summary>
    public const int Groups = 16;

    private readonly CommonDraw draw = new(models);

    /// <summary>Whether all options have the same values of what depends on others.</summary>
    public bool AllFollowFirst => draw.AllFollowFirst;

    /// <summary>Rows of a replicate.</summary>
    public int RowsOfGroup => (int)Math.Max(16, settings.Evaluations / Groups);

    /// <summary>The dimensions that a plan needs.</summary>
    public int Dimensions => draw.Columns + 1;

    /// <summary>The sums of the failure probabilities, by replicate, then by option and unit; last the number of rows.</summary>
    /// <param name="held">The factor.</param>
    /// <param name="decision">What failures count.</param>
    /// <param name="options">Threads, progress (in evaluations), cancellation.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public double[][] Sums(HeldFactor held, Decision? decision, RunOptions options)
    {
        ImmutableArray<double> units = held.Units;
        FactorSet[][] given = [.. models.Select(m => Enumerable.Range(0, units.Length).Select(n => held.Given(m.Factors, n)).ToArray())];
        int place = held.Factor.FirstColumn;
        long done = 0;
        BlockRun<double[]> run = BlockRunner.Run(
            Groups, 1, options with { Progress = null }, () => new Worker(models, draw.Columns, RowsOfGroup), (worker, group, _) =>
            {
                var plan = SamplingPlan.FromName(settings.Sampling, RowsOfGroup);
                UnitColumns.Fill(plan, settings.Seed, $"measure{group}", draw.Names, 0, 0, RowsOfGroup, worker.Drawn);
                FillDistances(worker, plan, group, decision);
                var sums = new double[(models.Length * units.Length) + 1];
                sums[^1] = RowsOfGroup;
                for (int node = 0; node < units.Length; node++)
                {
                    options.Cancellation.ThrowIfCancellationRequested();
                    for (int column = 0; column < draw.Columns; column++)
                    {
                        worker.Drawn[column].CopyTo(worker.Unit[column], 0);
                    }

                    worker.Unit[place].AsSpan().Fill(units[node]);
                    for (int m = 0; m < models.Length; m++)
                    {
                        draw.Map(m, worker.Unit, worker.Coupled, worker.Spaces[m], worker.Values[m], RowsOfGroup, given[m][node]);
                        models[m].Evaluate(worker.Values[m], RowsOfGroup, worker.Spaces[m]);
                        sums[(m * units.Length) + node] = Failed(worker, m, held.Factor);
                    }

                    options.Progress?.Invoke(Interlocked.Add(ref done, models.Length * RowsOfGroup));
                }

                return sums;
            });
        options.Cancellation.ThrowIfCancellationRequested();
        return [.. run.Blocks];
    }

    private double Failed(Worker worker, int m, Factor factor)
    {
        LifeModel model = models[m];
        Factor? own = model.Factors.Find(factor.Name);
        FailureChances chances = own is not null && model.Chances.IsExact && model.Chances.ModeOf(own) >= 0
            ? model.Chances.Holding([(own, worker.Values[m][own.FirstColumn][0])]) : model.Chances;
        CompensatedSum sum = default;
        for (int row = 0; row < RowsOfGroup; row++)
        {
            sum.Add(model.Chances.IsExact ? chances.FailureProbability(worker.Spaces[m], row, worker.Km[row])
                : worker.Spaces[m].LifeKm[row] < worker.Km[row] ? 1 : 0);
        }

        return sum.Value;
    }

    private void FillDistances(Worker worker, SamplingPlan plan, long group, Decision? decision)
    {
        Scenario scenario = models[0].Scenario;
        if (decision is not { UnderWarranty: true } || scenario.Fleet is not { } fleet)
        {
            worker.Km.AsSpan().Fill(decision?.Km ?? scenario.RequiredKm);
            return;
        }

        if (fleet.KmPerYear is Value.Uncertain { Distribution: var owners })
        {
            plan.Fill(new Randomness.StreamKey(settings.Seed, $"fleet.distance_km_per_year/measure{group}"), draw.Columns, 0, worker.Km);
            owners.Quantiles(worker.Km, worker.Km);
        }
        else
        {
            worker.Km.AsSpan().Fill(fleet.KmPerYear.Nominal);
        }

        foreach (ref double km in worker.Km.AsSpan())
        {
            km = Math.Min(km * fleet.WarrantyMonths / 12, fleet.WarrantyKm);
        }
    }

    private sealed class Worker(LifeModel[] models, int columns, int rows)
    {
        public double[][] Drawn { get; } = Workspace.Columns(columns, rows);

        public double[][] Unit { get; } = Workspace.Columns(columns, rows);

        public double[][] Coupled { get; } = Workspace.Columns(columns, rows);

        public double[] Km { get; } = new double[rows];

        public Workspace[] Spaces { get; } = [.. models.Select(m => m.CreateWorkspace(rows))];

        public double[][][] Values { get; } = [.. models.Select(m => m.CreateColumns(rows))];
    }
}
