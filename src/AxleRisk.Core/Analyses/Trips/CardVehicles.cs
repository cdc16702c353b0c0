using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Vehicles with a set of remedies and a load: what each leg uses up at each of its speeds, computed once, so that a combination of
/// speeds is a sum. A remedy changes the trip and not the past, as among <see cref="TripRemedies"/>.
/// </summary>
internal sealed class CardVehicles
{
    private readonly int modes;
    private readonly TripSurvival survival;
    private readonly double[] start;
    private readonly double[] limits;
    private readonly double[] plannedStart;
    private readonly bool hasOtherHousing;
    private readonly double[] reached; // the start, or what was planned to be it; by row
    private readonly List<(SeenRows? Rows, int Row)> seen = [];

    private CardVehicles(int rows, int modes, TripSurvival survival, bool hasOtherHousing, int legs, int speeds)
    {
        (Rows, this.modes, this.survival, this.hasOtherHousing) = (rows, modes, survival, hasOtherHousing);
        start = new double[rows * modes];
        plannedStart = new double[rows * modes];
        limits = new double[rows * modes];
        reached = new double[rows];
        Used = [.. Enumerable.Range(0, legs).Select(_ => Workspace.Columns(speeds, rows * modes))];
    }

    /// <summary>The number of vehicles.</summary>
    public int Rows { get; }

    /// <summary>What each mode uses up, by leg, speed, row and mode.</summary>
    public double[][][] Used { get; }

    /// <summary>The scenario with a load on every leg and each leg at one of its speeds.</summary>
    public static Scenario Set(Scenario whole, double? load, Func<int, double> speed)
    {
        int legs = whole.Trip!.Legs.Length;
        Scenario loaded = load is { } kg ? Enumerable.Range(0, legs).Aggregate(whole, (s, l) => Set(s, Quantities.Payload, l, kg)) : whole;
        return Enumerable.Range(0, legs).Aggregate(loaded, (s, l) => Set(s, Quantities.Speed, l, speed(l)));
    }

    /// <summary>Draws the vehicles and evaluates every leg at every speed.</summary>
    /// <param name="whole">The scenario as planned, with its trip's inputs among its own, made ready.</param>
    /// <param name="changed">The same with the remedies.</param>
    /// <param name="load">The load on every leg, kg; null for the planned one.</param>
    /// <param name="choice">The speeds.</param>
    /// <param name="survival">How survival follows.</param>
    /// <param name="settings">The number of vehicles, seed, plan.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static CardVehicles Draw(
        LifeModel whole, LifeModel changed, double? load, CardChoice choice, TripSurvival survival, StudySettings settings,
        CancellationToken cancellation)
    {
        LifeModel[] models = [whole, changed];
        var draw = new CommonDraw(models);
        var plan = new BlockPlan(settings, draw.Columns);
        int legs = choice.Speeds.Length, speeds = choice.Speeds.Max(s => s.Length);
        TripModel[] atSpeed = [.. Enumerable.Range(0, speeds).Select(i => new TripModel(
            Set(changed.Scenario, load, l => choice.Speeds[l][Math.Min(i, choice.Speeds[l].Length - 1)]), changed.Factors,
            Enumerable.Range(0, legs)))];
        TripWorkspace space = atSpeed[0].CreateWorkspace(StudySettings.BlockSize);
        TripWorkspace[] spaces = [space, .. atSpeed.Skip(1).Select(m => m.CreateWorkspace(StudySettings.BlockSize))];
        int rows = (int)Enumerable.Range(0, (int)plan.Blocks).Sum(b => plan[b].Rows), modes = atSpeed[0].Modes;
        bool other = AlreadyDriven(whole) != AlreadyDriven(changed);
        var vehicles = new CardVehicles(rows, modes, survival, other, legs, speeds);
        var drawn = new CardRows(models, draw);
        double[][] used = Workspace.Columns(legs, StudySettings.BlockSize * modes);
        int at = 0;
        for (long block = 0; block < plan.Blocks; block++)
        {
            cancellation.ThrowIfCancellationRequested();
            int count = drawn.Fill(plan, settings.Seed, block, atSpeed[0]);
            SeenRows? seen = survival.Seen is { } vehicle ? drawn.Seen(vehicle, count) : null;
            vehicles.seen.AddRange(Enumerable.Range(0, count).Select(row => (seen, row)));
            drawn.Start.AsSpan(0, count * modes).CopyTo(vehicles.start.AsSpan(at * modes));
            drawn.PlannedStart.AsSpan(0, count * modes).CopyTo(vehicles.plannedStart.AsSpan(at * modes));
            drawn.Limits.AsSpan(0, count * modes).CopyTo(vehicles.limits.AsSpan(at * modes));
            for (int i = 0; i < speeds; i++)
            {
                atSpeed[i].Evaluate(drawn.Values[1], count, spaces[i], used);
                for (int leg = 0; leg < legs; leg++)
                {
                    used[leg].AsSpan(0, count * modes).CopyTo(vehicles.Used[leg][i].AsSpan(at * modes));
                }
            }

            at += count;
        }

        vehicles.FillReached();
        return vehicles;
    }

    /// <summary>P(fails on the trip | reached its start) with what the whole trip uses up.</summary>
    /// <param name="total">By row and mode.</param>
    public double Risk(double[] total)
    {
        (double set, double failed) = (0, 0);
        Span<double> after = stackalloc double[modes];
        OtherHousing? other = hasOtherHousing ? new OtherHousing(survival, limits) : null;
        TripSurvival ofRow = survival.OfThread();
        for (int row = 0; row < Rows; row++)
        {
            int at = row * modes;
            ReadOnlySpan<double> before = start.AsSpan(at, modes), limit = limits.AsSpan(at, modes);
            for (int mode = 0; mode < modes; mode++)
            {
                after[mode] = before[mode] + total[at + mode];
            }

            set += reached[row];
            if (other is null)
            {
                ofRow.Take(seen[row].Rows, seen[row].Row);
                failed += ofRow.Fails(before, after, limit);
            }
            else
            {
                failed += reached[row] * other.Fails(before, after);
            }
        }

        return failed / set;
    }

    private void FillReached()
    {
        TripSurvival ofRow = survival.OfThread();
        for (int row = 0; row < Rows; row++)
        {
            ofRow.Take(seen[row].Rows, seen[row].Row);
            int at = row * modes;
            reached[row] = ofRow.At((hasOtherHousing ? plannedStart : start).AsSpan(at, modes), limits.AsSpan(at, modes));
        }
    }

    /// <summary>Whether an axle of its own is driven: a remedy says how far it has been.</summary>
    public static Value? AlreadyDriven(LifeModel model) => model.Scenario.Find(TripQuantities.AlreadyDriven)?.Value;

    private static Scenario Set(Scenario whole, Quantity quantity, int leg, double value)
    {
        int of = whole.Legs.Length + leg;
        Input? found = whole.Find(quantity, of);
        var set = new Input(
            found?.Name ?? $"{Trip.Prefix}{whole.Trip!.Legs[leg].Name}.{quantity.Key}", quantity, of, new Value.Certain(value), false);
        return whole with { Inputs = [.. whole.Inputs.Where(i => i != found), set] };
    }
}

/// <summary>A block of vehicles as planned and with a change, by the same random numbers.</summary>
/// <param name="models">The two scenarios made ready.</param>
/// <param name="draw">Their common draw.</param>
internal sealed class CardRows(LifeModel[] models, CommonDraw draw)
{
    private readonly double[][] unit = Workspace.Columns(draw.Columns, StudySettings.BlockSize);
    private readonly double[][] coupled = Workspace.Columns(draw.Columns, StudySettings.BlockSize);
    private readonly Workspace[] spaces = [.. models.Select(m => m.CreateWorkspace(StudySettings.BlockSize))];
    private readonly TripModel planned = new(models[0]);

    /// <summary>Factor values, of each scenario.</summary>
    public double[][][] Values { get; } = [.. models.Select(m => m.CreateColumns(StudySettings.BlockSize))];

    /// <summary>What each mode has used up before the trip with the change, by row and mode.</summary>
    public double[] Start { get; } = new double[StudySettings.BlockSize * models[0].Modes.Modes.Length];

    /// <summary>The same as planned.</summary>
    public double[] PlannedStart { get; } = new double[StudySettings.BlockSize * models[0].Modes.Modes.Length];

    /// <summary>How much each can use up, as drawn.</summary>
    public double[] Limits { get; } = new double[StudySettings.BlockSize * models[0].Modes.Modes.Length];

    /// <summary>What the rows last drawn have to do with the vehicle that was seen.</summary>
    public SeenRows Seen(SeenVehicle vehicle, int count) => vehicle.Rows(spaces[0], Values[0], count);

    /// <summary>The vehicles last drawn, as a block: as planned, on the way that is handed over.</summary>
    public TripBlock Block(double[][] legs, int count, Func<int, byte> groupOf, TripSurvival survival)
    {
        int modes = models[0].Modes.Modes.Length;
        var block = new TripBlock(
            [.. Values[0].Select(c => c[..count])], Start[..(count * modes)], [.. legs.Select(l => l[..(count * modes)])],
            Limits[..(count * modes)], [.. Enumerable.Range(0, count).Select(groupOf)], [], new double[count],
            survival.Seen is { } vehicle ? Seen(vehicle, count) : null);
        for (int row = 0; row < count; row++)
        {
            survival.Take(block.Seen, row);
            block.Reached[row] = survival.At(PlannedStart.AsSpan(row * modes, modes), block.LimitsOf(row));
        }

        return block;
    }

    /// <summary>Draws a block.</summary>
    /// <returns>Its rows.</returns>
    public int Fill(BlockPlan plan, ulong seed, long block, TripModel changed)
    {
        (int replicate, long first, int rows) = plan[block];
        draw.Draw(plan.PlanOf(replicate), seed, plan.StreamOf(replicate), first, rows, unit);
        for (int m = 0; m < models.Length; m++)
        {
            draw.Map(m, unit, coupled, spaces[m], Values[m], rows);
        }

        models[0].Evaluate(Values[0], rows, spaces[0]);
        models[0].FillLimits(Values[0], rows, Limits);
        planned.FillStart(Values[0], rows, spaces[0], PlannedStart);
        changed.FillStart(Values[1], rows, spaces[0], Start);
        return rows;
    }
}
