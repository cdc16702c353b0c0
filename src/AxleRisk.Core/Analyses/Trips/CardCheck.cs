using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>A card's risk by fresh vehicles.</summary>
internal static class CardCheck
{
    /// <summary>Evaluates a card.</summary>
    /// <param name="whole">The scenario as planned, made ready.</param>
    /// <param name="changed">The same with the remedies.</param>
    /// <param name="set">The same with the card's speeds and load.</param>
    /// <param name="survival">How survival follows.</param>
    /// <param name="settings">Vehicles, seed, plan.</param>
    /// <param name="stream">The name of the sample.</param>
    /// <param name="options">Threads, cancellation.</param>
    /// <returns>The sums, whether they are by leg, the number of vehicles.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static (TripSums Sums, bool HasLegs, long Rows) Run(
        LifeModel whole, LifeModel changed, Scenario set, TripSurvival survival, StudySettings settings, string stream,
        RunOptions options)
    {
        LifeModel[] models = [whole, changed];
        var draw = new CommonDraw(models);
        var plan = new BlockPlan(settings with { Seed = Randomness.StableHash.Of($"{stream}/{settings.Seed}") }, draw.Columns);
        int groups = TripSample.GroupsOf(plan, settings);
        var trip = new TripModel(set, changed.Factors, Enumerable.Range(0, set.Trip!.Legs.Length));
        bool other = CardVehicles.AlreadyDriven(whole) != CardVehicles.AlreadyDriven(changed);
        int legs = other ? 1 : trip.Legs;
        long rows = 0;
        BlockRun<TripSums> run = BlockRunner.Run(
            plan.Blocks, 1, options with { Progress = null },
            () => (Rows: new CardRows(models, draw), Space: trip.CreateWorkspace(StudySettings.BlockSize),
                Used: Workspace.Columns(trip.Legs, StudySettings.BlockSize * trip.Modes)),
            (worker, block, _) =>
            {
                int count = worker.Rows.Fill(plan, Randomness.StableHash.Of($"{stream}/{settings.Seed}"), block, trip);
                trip.Evaluate(worker.Rows.Values[1], count, worker.Space, worker.Used);
                var sums = new TripSums(legs, groups);
                var housing = other ? new OtherHousing(survival, worker.Rows.Limits[..(count * trip.Modes)]) : null;
                for (int row = 0; row < count; row++)
                {
                    Add(sums, TripSample.GroupOf(plan, groups, settings, block, row), worker.Rows, worker.Used, row, trip.Modes, survival,
                        housing);
                }

                Interlocked.Add(ref rows, count);
                return sums;
            });
        options.Cancellation.ThrowIfCancellationRequested();
        var all = new TripSums(legs, groups);
        foreach (TripSums block in run.Blocks)
        {
            all.Add(block);
        }

        return (all, !other, rows);
    }

    private static void Add(
        TripSums sums, int group, CardRows drawn, double[][] used, int row, int modes, TripSurvival survival, OtherHousing? housing)
    {
        Range place = (row * modes)..((row + 1) * modes);
        if (housing is null)
        {
            sums.Add(group, drawn.Start.AsSpan(place), used, row, drawn.Limits.AsSpan(place), survival);
            return;
        }

        Span<double> after = stackalloc double[modes];
        drawn.Start.AsSpan(place).CopyTo(after);
        foreach (double[] leg in used)
        {
            VectorColumns.Add(leg.AsSpan(place), after);
        }

        double reached = survival.At(drawn.PlannedStart.AsSpan(place), drawn.Limits.AsSpan(place));
        sums.Add(group, reached, reached * housing.Fails(drawn.Start.AsSpan(place), after));
    }
}
