using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>Events of the legs: each a cycle of the wheel's load or of the section's moment, n times a km.</summary>
public sealed class EventRatesTests
{
    // The five-leg vehicle: 600 and 90 kg, so 690 x 9.80665 = 6766.59 N on the wheel.
    private const double WheelN = 690 * 9.80665;

    // Tube 95 x 6 mm, arm 240 mm, by hand: Z = pi (95^4 - 83^4)/(32 x 95) mm3.
    private static readonly double MPaPerN = 240 / (Math.PI * (Math.Pow(95, 4) - Math.Pow(83, 4)) / (32 * 95));

    // Mean curve of DNV-RP-C203 class E: 12.010 and 15.350 and 0.40; knee at 46.77 MPa.
    private static double Damage(double rangeMPa) =>
        rangeMPa >= 46.77 ? Math.Pow(rangeMPa, 3) / Math.Pow(10, 12.41) : Math.Pow(rangeMPa, 5) / Math.Pow(10, 15.75);

    [Theory]
    [InlineData(3.0)]
    [InlineData(0.5)]
    public void A_load_of_the_wheel_adds_its_cycles_to_the_damage_of_its_leg(double times)
    {
        (double[] without, _) = Evaluate(TripCases.CertainVehicle);
        (double[] with, double total) = Evaluate(With(TripCases.CertainVehicle, 1, Quantities.EventWheelLoad, times, 0.7));
        double added = 0.30 * 0.7 * Damage(times * WheelN * MPaPerN); // leg 2 has 0.30 of the distance
        Assert.Equal(without[1] + added, with[1], 1e-6 * added);
        Assert.Equal(without[0], with[0], 1e-12 * with[0]);
        Assert.Equal(with.Sum(), total, 1e-12 * total);
    }

    // A moment is a force at the lever arm.
    [Fact]
    public void A_moment_is_the_wheel_load_that_would_make_it()
    {
        double moment = 2 * WheelN * 240 / 1e6;
        (double[] byLoad, _) = Evaluate(With(TripCases.CertainVehicle, 0, Quantities.EventWheelLoad, 2, 1));
        (double[] byMoment, _) = Evaluate(With(TripCases.CertainVehicle, 0, Quantities.EventMoment, moment, 1));
        Assert.Equal(byLoad[0], byMoment[0], 1e-9 * byLoad[0]);
    }

    [Fact]
    public void The_base_case_tells_its_share_and_the_ratio_of_the_leg_multiplies_it_too()
    {
        Scenario events = With(TripCases.CertainVehicle, 0, Quantities.EventWheelLoad, 3, 0.7);
        BaseCaseResult plain = BaseCaseAnalysis.Run(new LifeModel(events));
        BaseEvent told = Assert.Single(plain.Axle!.Events);
        double added = 0.20 * 0.7 * Damage(3 * WheelN * MPaPerN);
        Assert.Equal(added, told.Share * plain.DamagePerKm, 1e-6 * added);
        Assert.Equal(told.Share, told.ShareOfLeg * plain.Axle.Legs[0].DamageShare, 1e-9);
        BaseCaseResult doubled = BaseCaseAnalysis.Run(new LifeModel(events with
        {
            Inputs = [.. events.Inputs, new Input("legs.leg1.damage_ratio", Quantities.LegDamageRatio, 0, new Value.Certain(2), false)],
        }));
        Assert.Equal(told.ShareOfLeg, doubled.Axle!.Events[0].ShareOfLeg, 1e-9);
        Assert.Equal(2 * added, doubled.Axle.Events[0].Share * doubled.DamagePerKm, 1e-6 * added);
    }

    // The wheel's load swings to max(W + r W/2, r W): with r = 4, that is 4 W; the section takes 3 W more than its static 600 kg and half
    // of 90 kg. Yield: each event that reaches it counts. Bearing: a turn under (P/C)^(10/3) million revolutions (ISO 281).
    [Fact]
    public void A_great_load_yields_and_wears_the_bearing()
    {
        Scenario scenario = CertainModes.Scenario;
        Scenario with = With(scenario, 2, Quantities.EventWheelLoad, 4, 0.01);
        (_, double yields, double lives) = CertainModes.Rates(scenario);
        (_, double yieldsWith, double livesWith) = CertainModes.Rates(with);
        double peak = (645 + (3 * 690)) * 9.80665;
        double stress = scenario.Find(Quantities.StressFactor)!.Value.Nominal * (240 + 20) / 240 * MPaPerN * peak; // offset 20 mm
        bool isYield = stress >= scenario.Find(Quantities.YieldStrength)!.Value.Nominal;
        Assert.True(isYield);
        Assert.Equal(yields + (0.25 * 0.01), yieldsWith, 1e-6 * yieldsWith);
        double factor = Math.Max(Math.Abs(1 + (-10.0 / 70)), 10.0 / 70); // overhang -30 + 20 mm over a spread of 70 mm
        double added = 0.25 * 0.01 * Math.Pow(factor * peak / 14_000, 10.0 / 3) / 1e6;
        Assert.Equal(lives + added, livesWith, 1e-3 * added + (1e-7 * lives));
    }

    // The same as a moment: its half range is what a load's swing is over the static one. At the section the arm is 240 + 20 mm, so a
    // moment of 4 x 690 kg there has the force of that moment over 260 mm; the greatest force is 645 kg and half of it.
    [Theory]
    [InlineData(1.02)]
    [InlineData(0.98)]
    public void A_great_moment_yields_where_its_half_over_the_static_stress_does(double over)
    {
        Scenario scenario = CertainModes.Scenario;
        double strength = scenario.Find(Quantities.YieldStrength)!.Value.Nominal;
        double perN = scenario.Find(Quantities.StressFactor)!.Value.Nominal * 260 / 240 * MPaPerN;
        double halfN = (over * strength / perN) - (645 * 9.80665);
        Scenario with = With(scenario, 2, Quantities.EventMoment, 2 * halfN * 260 / 1e6, 0.01);
        (_, double yields, _) = CertainModes.Rates(scenario);
        (_, double yieldsWith, _) = CertainModes.Rates(with);
        Assert.Equal(over > 1 ? 0.25 * 0.01 : 0, yieldsWith - yields, 1e-6 * yieldsWith);
    }

    [Fact]
    public void A_leg_of_a_trip_has_the_events_of_the_leg_it_is_like()
    {
        Scenario with = With(TripCases.CertainVehicle, 0, Quantities.EventWheelLoad, 3, 0.7);
        double[] used = Used(with), without = Used(TripCases.CertainVehicle);
        double added = 100 * 0.7 * Damage(3 * WheelN * MPaPerN);
        Assert.Equal(without[0] + added, used[0], 1e-6 * added);

        static double[] Used(Scenario scenario)
        {
            var whole = new LifeModel(Trip.Whole(TripCases.Like(scenario, 0, (0, 100.0))));
            var model = new TripModel(whole);
            double[][] used = Workspace.Columns(1, 1);
            model.Evaluate(whole.CreateColumns(1), 1, model.CreateWorkspace(1), used);
            return used[0];
        }
    }

    private static Scenario With(Scenario scenario, int leg, Quantity size, double value, double perKm)
    {
        string path = $"legs.leg{leg + 1}.events.hole.";
        return scenario with
        {
            Inputs =
            [
                .. scenario.Inputs,
                new Input(path + "per_km", Quantities.EventsPerKm, leg, new Value.Certain(perKm), false) { Event = "hole" },
                new Input(path + size.Key, size, leg, new Value.Certain(value), false) { Event = "hole" },
            ],
        };
    }

    private static (double[] ByLeg, double Total) Evaluate(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(1);
        model.Evaluate([.. model.CreateColumns(1).Select((c, i) => (double[])[model.Factors.Factors[i].Nominal[0]])], 1, workspace);
        return ([.. workspace.DamageByLeg.Select(l => l[0])], workspace.DamagePerKm[0]);
    }
}
