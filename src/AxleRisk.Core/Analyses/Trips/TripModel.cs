using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// What legs of a trip use up of each mode of failure, on the factor columns of the whole scenario: its legs are evaluated as
/// legs of use, those of
/// one load together. Holds no state that changes; each thread brings its own <see cref="TripWorkspace"/>.
/// </summary>
internal sealed class TripModel
{
    private readonly ImmutableArray<VehicleLoad> loads;
    private readonly ImmutableArray<(int? Column, double Km)> distances;
    private readonly (int? Column, double Km) alreadyDriven;
    private readonly (int? Column, double Km) vehicleAt;

    /// <summary>Prepares legs of a trip.</summary>
    /// <param name="whole">The scenario with its trip's inputs among its own.</param>
    /// <param name="factors">The factors whose columns will be handed over, by name; those of <paramref name="whole"/> or of a
    /// scenario it was changed from.</param>
    /// <param name="legs">The legs' indices in the trip.</param>
    public TripModel(Scenario whole, FactorSet factors, IEnumerable<int> legs)
    {
        Legs = whole.Trip!.Legs.Length;
        Modes = new ModeSet(whole).Modes.Length;
        distances = [.. Enumerable.Range(0, Legs)
            .Select(l => SourceOf(whole.Find(TripQuantities.Distance, whole.Legs.Length + l), factors))];
        alreadyDriven = SourceOf(whole.Find(TripQuantities.AlreadyDriven), factors);

        // A housing put in before the trip is driven by the vehicle that there is, whatever it has been driven itself.
        Input? stated = whole.Trip.Inputs.FirstOrDefault(i => i.Quantity == TripQuantities.AlreadyDriven);
        vehicleAt = SourceOf(stated, factors);
        int[] prepared = [.. legs];
        loads = [.. VehiclesOf(whole, stated?.Value ?? new Value.Certain(0)).SelectMany(v => TripLegScenario.Of(v.Scenario, prepared)
            .Select(s => new VehicleLoad(v.FromKm, v.ToKm, new LifeModel(s.Scenario, factors), s.Legs)))];
    }

    /// <summary>Prepares all legs of a trip.</summary>
    public TripModel(LifeModel whole)
        : this(whole.Scenario, whole.Factors, Enumerable.Range(0, whole.Scenario.Trip!.Legs.Length))
    {
    }

    /// <summary>The number of the trip's legs, prepared or not.</summary>
    public int Legs { get; }

    /// <summary>The number of modes of failure.</summary>
    public int Modes { get; }

    /// <summary>Buffers for one thread and blocks of up to <paramref name="capacity"/> rows.</summary>
    public TripWorkspace CreateWorkspace(int capacity) =>
        new([.. loads.Select(l => l.Model.CreateWorkspace(capacity))], new double[capacity], new double[capacity]);

    /// <summary>
    /// What each prepared leg uses up over its whole distance, by leg, row and mode, of vehicles as worn as they are at the
    /// trip's start; other legs are left as they are.
    /// </summary>
    public void Evaluate(double[][] values, int count, TripWorkspace workspace, double[][] usedByLeg)
    {
        for (int row = 0; row < count; row++)
        {
            workspace.StartKm[row] = KmOf(alreadyDriven, values, row);
            workspace.VehicleKm[row] = KmOf(vehicleAt, values, row);
        }

        for (int load = 0; load < loads.Length; load++)
        {
            (_, _, LifeModel model, ImmutableArray<int> legs) = loads[load];
            Workspace evaluated = workspace.Loads[load];
            model.EvaluateAtAges(values, count, workspace.StartKm, evaluated);
            for (int place = 0; place < legs.Length; place++)
            {
                for (int mode = 0; mode < Modes; mode++)
                {
                    double[] perKm = mode == 0 ? evaluated.DamageByLeg[place] : evaluated.Rates!.FurtherAtAge[0][mode - 1];
                    Scale(loads[load], workspace.VehicleKm, distances[legs[place]], values, count, perKm, usedByLeg[legs[place]], mode);
                }
            }
        }
    }

    /// <summary>What each mode has used up before the trip, by row and mode, from the evaluated usual use.</summary>
    public void FillStart(double[][] values, int count, Workspace usual, double[] used)
    {
        for (int row = 0; row < count; row++)
        {
            FailureChances.FillUsed(usual, row, KmOf(alreadyDriven, values, row), used.AsSpan(row * Modes, Modes));
        }
    }

    // The vehicles that may set out: as they are in the stretch that the trip begins in, all of them where that is uncertain.
    private static IEnumerable<(double FromKm, double ToKm, Scenario Scenario)> VehiclesOf(Scenario whole, Value driven)
    {
        ImmutableArray<StretchScenario> stretches = Stretches.VehiclesOf(whole);
        if (stretches.IsEmpty)
        {
            return [(double.NegativeInfinity, double.PositiveInfinity, whole with { History = [] })];
        }

        (double least, double most) = driven is Value.Uncertain { Distribution: var d }
            ? (d.Minimum, d.Maximum) : (driven.Nominal, driven.Nominal);
        return stretches.Where(s => s.FromKm <= most && s.ToKm > least).Select(s => (s.FromKm, s.ToKm, s.Scenario));
    }

    private static (int? Column, double Km) SourceOf(Input? input, FactorSet factors)
    {
        int column = input?.Value is Value.Uncertain ? factors.ColumnNames.IndexOf(input.Name) : -1;
        return column >= 0 ? (column, 0) : (null, input?.Value.Nominal ?? 0);
    }

    private static double KmOf((int? Column, double Km) distance, double[][] values, int row) =>
        distance.Column is { } column ? values[column][row] : distance.Km;

    private void Scale(
        VehicleLoad load, double[] vehicleKm, (int? Column, double Km) distance, double[][] values, int count, double[] perKm,
        double[] used, int mode)
    {
        for (int row = 0; row < count; row++)
        {
            if (!(vehicleKm[row] >= load.FromKm && vehicleKm[row] < load.ToKm))
            {
                continue;
            }

            // An axle without a wall left breaks at once, but not on a road it is not driven on.
            double km = KmOf(distance, values, row);
            used[row * Modes + mode] = km == 0 ? 0 : km * perKm[row];
        }
    }
}

/// <summary>Legs driven with one load, by a vehicle whose trip begins in a stretch of its history.</summary>
/// <param name="FromKm">Where the stretch begins, km.</param>
/// <param name="ToKm">Where it ends, km.</param>
/// <param name="Model">The legs as legs of use.</param>
/// <param name="Legs">Their indices in the trip.</param>
internal sealed record VehicleLoad(double FromKm, double ToKm, LifeModel Model, ImmutableArray<int> Legs);

/// <summary>The buffers of one thread: one workspace for each load, the distance that the axle has driven before the trip, and that of
/// the vehicle.</summary>
internal sealed record TripWorkspace(ImmutableArray<Workspace> Loads, double[] StartKm, double[] VehicleKm);
