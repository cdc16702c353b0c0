using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Remedies taken before a trip, side by side on the same vehicles. A remedy changes the trip, not the past: the damage per
/// km of the usual use stays that of the vehicle as it was, and so do its Miner sum and scatters; unless the remedy says how far
/// the axle has been driven, for then it is another one, in the same vehicles: those that reached the stated start.
/// </summary>
internal static class TripRemedies
{
    /// <summary>Compares the remedies; none where the run was ended early.</summary>
    /// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
    /// <param name="remedies">The remedies.</param>
    /// <param name="survival">How survival follows from damage.</param>
    /// <param name="settings">Evaluations of each case, seed, sampling plan.</param>
    /// <param name="options">Threads, progress (in evaluations of all cases together), cancellation.</param>
    /// <exception cref="StudyException">The sampling plan has fewer dimensions than are needed.</exception>
    public static ImmutableArray<TripRemedy> Run(
        LifeModel whole, ImmutableArray<Remedy> remedies, TripSurvival survival, StudySettings settings, RunOptions options)
    {
        if (remedies.IsEmpty)
        {
            return [];
        }

        LifeModel[] models = [whole, .. remedies.Select(r => new LifeModel(Remedy.Apply(whole.Scenario, r)))];
        TripModel[] trips = [.. models.Select(m => new TripModel(m))];
        var draw = new CommonDraw(models);
        var plan = new BlockPlan(settings, draw.Columns);
        int groups = TripSample.GroupsOf(plan, settings);
        long rows = 0;
        BlockRun<TripSums[]> run = BlockRunner.Run(
            plan.Blocks, 1, options with { Progress = null },
            () => new Worker(models, trips, draw, survival.OfThread()), (worker, block, _) =>
            {
                TripSums[] sums = worker.Sum(plan, settings, block, groups);
                long soFar = Interlocked.Add(ref rows, plan[block].Rows);
                options.Progress?.Invoke(soFar * models.Length);
                return sums;
            });
        return run.IsPartial ? [] : Compare(run.Blocks, remedies, groups, !survival.IsConditional);
    }

    private static ImmutableArray<TripRemedy> Compare(IReadOnlyList<TripSums[]> blocks, ImmutableArray<Remedy> remedies, int groups,
        bool counted)
    {
        TripSums[] cases = [.. blocks[0].Select(_ => new TripSums(1, groups))];
        foreach (TripSums[] block in blocks)
        {
            for (int m = 0; m < cases.Length; m++)
            {
                cases[m].Add(block[m]);
            }
        }

        IEnumerable<TripRemedy> rows = remedies.Select((remedy, i) => Compare(remedy, cases[0], cases[i + 1], counted));
        return [.. rows.OrderBy(r => double.IsNaN(r.Probability.Estimate) ? r.Probability.High : r.Probability.Estimate)];
    }

    internal static TripRemedy Compare(Remedy remedy, TripSums planned, TripSums changed, bool counted)
    {
        Interval probability = changed.Trip(counted), plan = planned.Trip(counted);
        if (double.IsNaN(probability.Estimate) || double.IsNaN(plan.Estimate))
        {
            // Few vehicles carry one of the two: their bounds are all there is.
            return new TripRemedy(
                remedy, probability, new Interval(double.NaN, probability.Low - plan.High, probability.High - plan.Low),
                new Interval(double.NaN, probability.Low / plan.High, probability.High / plan.Low));
        }

        double[][] both = [.. planned.OfGroups.Zip(changed.OfGroups, (p, c) => (double[])[.. p, .. c])];
        Interval difference = Jackknife.Estimate(both, s => (s[3] / s[2]) - (s[1] / s[0]));
        (double ratio, double error) = Jackknife.WithStandardError(both, s => s[3] / s[2] / (s[1] / s[0]));
        double spread = Math.Exp(-StudentT.Quantile(0.025, both.Length - 1) * error / ratio);
        Interval times = ratio > 0 ? new Interval(ratio, ratio / spread, ratio * spread) : new Interval(ratio, ratio, ratio);
        return new TripRemedy(remedy, probability, difference, times);
    }

    private sealed class Worker(LifeModel[] models, TripModel[] trips, CommonDraw draw, TripSurvival survival)
    {
        private readonly double[][] unit = Workspace.Columns(draw.Columns, StudySettings.BlockSize);
        private readonly double[][] coupled = Workspace.Columns(draw.Columns, StudySettings.BlockSize);
        private readonly Workspace[] usual = [.. models.Select(m => m.CreateWorkspace(StudySettings.BlockSize))];
        private readonly double[][][] values = [.. models.Select(m => m.CreateColumns(StudySettings.BlockSize))];
        private readonly TripWorkspace[] legs = [.. trips.Select(t => t.CreateWorkspace(StudySettings.BlockSize))];
        private readonly int modes = trips[0].Modes; // a remedy changes values: it adds none
        private readonly double[][] used = Workspace.Columns(trips[0].Legs, StudySettings.BlockSize * trips[0].Modes);
        private readonly double[] start = new double[StudySettings.BlockSize * trips[0].Modes];
        private readonly double[] plannedStart = new double[StudySettings.BlockSize * trips[0].Modes];
        private readonly double[] limits = new double[StudySettings.BlockSize * trips[0].Modes];
        private readonly bool[] hasOtherHousing = [.. models.Select(m => AlreadyDriven(m) != AlreadyDriven(models[0]))];
        private readonly double[][] total = Workspace.Columns(1, StudySettings.BlockSize * trips[0].Modes);

        private static Value? AlreadyDriven(LifeModel model) => model.Scenario.Find(TripQuantities.AlreadyDriven)?.Value;

        public TripSums[] Sum(BlockPlan plan, StudySettings settings, long block, int groups)
        {
            (int replicate, long first, int rows) = plan[block];
            draw.Draw(plan.PlanOf(replicate), settings.Seed, plan.StreamOf(replicate), first, rows, unit);
            var sums = new TripSums[models.Length];
            SeenRows? seen = null;
            for (int m = 0; m < models.Length; m++)
            {
                draw.Map(m, unit, coupled, usual[m], values[m], rows);
                if (m == 0)
                {
                    models[0].Evaluate(values[0], rows, usual[0]);
                    models[0].FillLimits(values[0], rows, limits);
                    seen = survival.Seen?.Rows(usual[0], values[0], rows);
                }

                trips[m].FillStart(values[m], rows, usual[0], start);
                if (m == 0)
                {
                    start.CopyTo(plannedStart, 0);
                }

                var other = hasOtherHousing[m] ? new OtherHousing(survival, limits[..(rows * modes)]) : null;
                trips[m].Evaluate(values[m], rows, legs[m], used);
                total[0].AsSpan().Clear();
                foreach (double[] leg in used)
                {
                    VectorColumns.Add(leg, total[0]);
                }

                sums[m] = new TripSums(1, groups);
                for (int row = 0; row < rows; row++)
                {
                    int group = TripSample.GroupOf(plan, groups, settings, block, row);
                    Range place = (row * modes)..((row + 1) * modes);
                    survival.Take(seen, row);
                    ReadOnlySpan<double> before = start.AsSpan(place);
                    if (other is null)
                    {
                        sums[m].Add(group, survival.At(before, limits.AsSpan(place)), before, total, row, limits.AsSpan(place), survival);
                    }
                    else
                    {
                        // The vehicle is one that reached the stated start; its new axle has a Miner sum and scatters of its own.
                        double reached = survival.At(plannedStart.AsSpan(place), limits.AsSpan(place));
                        Span<double> after = total[0].AsSpan(place);
                        VectorColumns.Add(before, after);
                        sums[m].Add(group, reached, reached * other.Fails(before, after));
                    }
                }
            }

            return sums;
        }
    }
}
