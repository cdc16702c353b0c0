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
    /// <returns>The sums, the vehicles (none of another housing), the number drawn.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static (TripSums Sums, TripSample? Vehicles, long Rows) Run(
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
        BlockRun<(TripSums Sums, TripBlock Block)> run = BlockRunner.Run(
            plan.Blocks, 1, options with { Progress = null },
            () => (Rows: new CardRows(models, draw), Space: trip.CreateWorkspace(StudySettings.BlockSize),
                Used: Workspace.Columns(trip.Legs, StudySettings.BlockSize * trip.Modes), Survival: survival.OfThread()),
            (worker, block, _) =>
            {
                int count = worker.Rows.Fill(plan, Randomness.StableHash.Of($"{stream}/{settings.Seed}"), block, trip);
                trip.Evaluate(worker.Rows.Values[1], count, worker.Space, worker.Used);
                TripBlock drawn = worker.Rows.Block(worker.Used, count, row => TripSample.GroupOf(plan, groups, settings, block, row),
                    worker.Survival);
                var sums = new TripSums(legs, groups);
                var housing = other ? new OtherHousing(survival, drawn.Limits) : null;
                for (int row = 0; row < count; row++)
                {
                    worker.Survival.Take(drawn.Seen, row);
                    Add(sums, drawn, row, worker.Survival, housing);
                }

                Interlocked.Add(ref rows, count);
                return (sums, drawn);
            });
        options.Cancellation.ThrowIfCancellationRequested();
        var all = new TripSums(legs, groups);
        foreach ((TripSums block, _) in run.Blocks)
        {
            all.Add(block);
        }

        return (all, other ? null : new TripSample([.. run.Blocks.Select(b => b.Block)], rows, groups, false), rows);
    }

    private static void Add(TripSums sums, TripBlock drawn, int row, TripSurvival survival, OtherHousing? housing)
    {
        int group = drawn.Group[row];
        ReadOnlySpan<double> start = drawn.StartOf(row);
        if (housing is null)
        {
            sums.Add(group, drawn.Reached[row], start, drawn.Legs, row, drawn.LimitsOf(row), survival);
            return;
        }

        Span<double> after = stackalloc double[start.Length];
        start.CopyTo(after);
        foreach (double[] leg in drawn.Legs)
        {
            VectorColumns.Add(leg.AsSpan(row * start.Length, start.Length), after);
        }

        sums.Add(group, drawn.Reached[row], drawn.Reached[row] * housing.Fails(start, after));
    }
}
