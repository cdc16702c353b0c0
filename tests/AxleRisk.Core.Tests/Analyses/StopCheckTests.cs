using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Strikes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>How the suspension meets its bump stop in the base case.</summary>
public sealed class StopCheckTests
{
    // Counted in simulations of the ride in time, sixteen records of 256 s, stop 300 N/mm (docs/model.md, section 8).
    [Theory]
    [InlineData(1024, 80, 40, 18.2)]
    [InlineData(4096, 50, 40, 100.0)]
    [InlineData(4096, 50, 60, 34.7)]
    [InlineData(4096, 80, 80, 17.8)]
    public void Strikes_come_as_often_as_they_were_counted(double roughness, double speed, double clearance, double perKm)
    {
        StopLeg leg = Assert.Single(StopCheck.Run(OneLeg(roughness, speed, clearance)).Legs);
        Assert.Equal(perKm, leg.PerKm, 0.05 * perKm);
    }

    // What strikes add, 300 N/mm: the damage with them over that without is told by two runs of the model.
    [Fact]
    public void The_share_that_strikes_add_is_that_of_two_runs()
    {
        double with = BaseCaseAnalysis.Run(new(OneLeg(4096, 50, 40))).DamagePerKm;
        double without = BaseCaseAnalysis.Run(new(OneLeg(4096, 50, null))).DamagePerKm;
        StopResult stop = StopCheck.Run(OneLeg(4096, 50, 40));
        Assert.Equal(1 - without / with, stop.StrikeShare, 1e-4);
        Assert.True(stop.StrikeShare > 0.03);
    }

    // A payload takes m g / ks of the clearance: 300 kg on the wheel and 45 N/mm are 65.4 mm.
    [Fact]
    public void With_the_clearance_that_is_told_strikes_come_once_a_km_under_the_payload()
    {
        Scenario loaded = ThreeModes.With(
            OneLeg(1024, 60, null), (Quantities.Payload, new Value.Certain(1000)), (Quantities.PayloadShare, new Value.Certain(0.3)));
        StopResult none = StopCheck.Run(loaded);
        Assert.False(none.IsStated);
        Assert.Equal(0, none.Legs[0].PerKm);
        double needed = none.Legs[0].RareFromMm;
        StopLeg stated = StopCheck.Run(ThreeModes.With(loaded, (Quantities.BumpClearance, new Value.Certain(needed)))).Legs[0];
        Assert.Equal(1, stated.PerKm, 1e-9);
        StopLeg resting = StopCheck.Run(ThreeModes.With(loaded, (Quantities.BumpClearance, new Value.Certain(65)))).Legs[0];
        Assert.True(resting is { Level: 0, IsRough: true, IsOften: true });
    }

    [Fact]
    public void Legs_of_a_trip_are_told_with_the_load_they_are_driven_with()
    {
        Scenario scenario = ThreeModes.With(
            FiveLegs.Scenario, (Quantities.BumpClearance, new Value.Certain(60)), (Quantities.PayloadShare, new Value.Certain(0.5)));
        Scenario trip = TripCases.Stating(TripCases.Like(scenario, 0, (3, 100), (3, 100)), 1, Quantities.Payload, new Value.Certain(200));
        StopLeg[] legs = [.. StopCheck.Run(trip).Legs];
        Assert.Equal(7, legs.Length);
        Assert.Equal(legs[3].PerKm, legs[5].PerKm, 1e-9 * legs[3].PerKm);
        Assert.True(legs[6].IsTrip && legs[6].PerKm > 2 * legs[5].PerKm);
    }

    // Of a leg a third of which is corrugated a third of the strikes come as if all of it were, the others as if none; where the
    // corrugation is flat, as many as without.
    [Fact]
    public void Strikes_on_a_leg_partly_corrugated_are_those_of_its_parts()
    {
        double PerKm(double share, double rms = 8) => StopCheck.Run(ThreeModes.With(OneLeg(1024, 60, 50)) is var one ? one with
        {
            Inputs = [.. one.Inputs,
                new Input("legs.leg1.corrugated_share", Quantities.CorrugatedShare, 0, new Value.Certain(share), false),
                new Input("legs.leg1.corrugation_wavelength_m", Quantities.CorrugationWavelength, 0, new Value.Certain(0.8), false),
                new Input("legs.leg1.corrugation_rms_mm", Quantities.CorrugationRms, 0, new Value.Certain(rms), false)],
        } : one).Legs[0].PerKm;
        Assert.True(Math.Abs(PerKm(1) - PerKm(0)) > 0.1 * PerKm(0));
        Assert.Equal(((2 * PerKm(0)) + PerKm(1)) / 3, PerKm(1.0 / 3), 1e-6 * PerKm(1));
        Assert.Equal(PerKm(0), PerKm(0.5, rms: 0), 1e-6 * PerKm(0));
    }

    private static Scenario OneLeg(double roughness, double speed, double? clearance)
    {
        Scenario one = FiveLegs.Scenario with
        {
            Legs = [FiveLegs.Scenario.Legs[0] with { Share = 1 }],
            Inputs =
            [
                .. FiveLegs.Scenario.Inputs.Where(i => i.Leg is null or 0).Select(i => i with
                {
                    Value = new Value.Certain(
                        i.Quantity == Quantities.Roughness ? roughness : i.Quantity == Quantities.Speed ? speed
                        : i.Quantity == Quantities.ContactLength ? 180 : i.Value.Nominal),
                }),
            ],
        };
        return clearance is { } mm ? ThreeModes.With(one, (Quantities.BumpClearance, new Value.Certain(mm))) : one;
    }
}
