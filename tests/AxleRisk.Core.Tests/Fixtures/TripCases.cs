using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>Trips of the five-leg benchmark, invented.</summary>
internal static class TripCases
{
    /// <summary>The benchmark with everything certain but Miner sum and scatter.</summary>
    public static Scenario CertainVehicle { get; } = FiveLegs.Scenario with
    {
        Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
            i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                { Value = new Value.Certain(i.Value.Nominal) })],
    };

    /// <summary>The life with every factor at its median, km.</summary>
    public static double MedianLifeKm(LifeModel model)
    {
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Nominal[0];
        }

        model.Evaluate(values, 1, workspace);
        return workspace.LifeKm[0];
    }

    /// <summary>A scenario with a trip over legs that are like usual ones.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="alreadyDrivenKm">The distance before it.</param>
    /// <param name="legs">The usual leg's index and the distance of each.</param>
    public static Scenario Like(Scenario scenario, double alreadyDrivenKm, params IEnumerable<(int Like, double Km)> legs)
    {
        (int Like, double Km)[] all = [.. legs];
        return scenario with
        {
            Trip = new Trip
            {
                Legs = [.. all.Select((l, i) => new TripLeg($"leg{i + 1}", scenario.Legs[l.Like].RoadClass, l.Like))],
                Inputs =
                [
                    new Input("trip.already_driven_km", TripQuantities.AlreadyDriven, null, new Value.Certain(alreadyDrivenKm), false),
                    .. all.Select((l, i) => Input(scenario, i, TripQuantities.Distance, new Value.Certain(l.Km))),
                ],
            },
        };
    }

    /// <summary>A trip over all usual legs in proportion to their shares.</summary>
    public static Scenario Usual(Scenario scenario, double alreadyDrivenKm, double km) =>
        Like(scenario, alreadyDrivenKm, scenario.Legs.Select((l, i) => (i, km * l.Share)));

    /// <summary>The scenario with one more statement about a leg of its trip.</summary>
    public static Scenario Stating(Scenario scenario, int leg, Quantity quantity, Value value) => scenario with
    {
        Trip = scenario.Trip! with { Inputs = [.. scenario.Trip.Inputs, Input(scenario, leg, quantity, value)] },
    };

    private static Input Input(Scenario scenario, int leg, Quantity quantity, Value value) =>
        new($"trip.leg{leg + 1}.{quantity.Key}", quantity, scenario.Legs.Length + leg, value, false);
}
