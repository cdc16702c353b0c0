using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Damage.Yields;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Damage;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Modes;

/// <summary>
/// Every input of the modes and of ageing reaches the answer with the value it should: closed forms of one vehicle, from the
/// scenario's inputs. All
/// factors stand at their medians.
/// </summary>
public class ModeInputsTests
{
    private const double Gravity = 9.80665;

    private static readonly Scenario Basis = ThreeModes.With(
        ThreeModes.Scenario with { RequiredKm = 100_000 }, (Quantities.TyreDamping, new Value.Certain(200)));

    // Rice (1944) from moments of the scalar kernel: static stress, wheel offset, outboard mass, corroded wall at each age.
    [Theory]
    [InlineData(0, 0, 0.5, 0)]
    [InlineData(40, 0, 0.5, 0)]
    [InlineData(40, 0.8, 0.5, 0)]
    [InlineData(0, 0, 0.1, 0)]
    [InlineData(40, 0.8, 0.9, 0.4)]
    public void First_yield_is_Rices_formula_of_all_that_bends_the_section(double offset, double loss, double outboard, double wear)
    {
        Scenario scenario = Set(Basis, (Quantities.WheelOffset, offset), (Quantities.OutboardShare, outboard),
            (Quantities.YieldStrength, 225),
            (Quantities.CorrosionRate, loss), (Quantities.DamperWear, wear));
        (LifeModel model, Workspace workspace) = Median(scenario);
        AgeGrid ages = AgeGrid.Over(scenario.RequiredKm);
        double[][] rates = workspace.Rates!.Of(YieldMode.Name);
        for (int age = 0; age < ages.Km.Length; age++)
        {
            double passed = ages.Km[age] / 100_000;
            double diameter = In(scenario, Quantities.OutsideDiameter);
            double bore = diameter - 2 * (In(scenario, Quantities.Wall) - loss * passed);
            double modulus = Math.PI * (Math.Pow(diameter, 4) - Math.Pow(bore, 4)) / (32 * diameter);
            double stressPerForce = In(scenario, Quantities.StressFactor) * (In(scenario, Quantities.LeverArm) + offset) / modulus;
            // The grid of fewer points.
            Near.Relative(Rice(workspace.Damage, stressPerForce, Math.Pow(1 - wear, passed), 225), rates[age][0], 1e-3);
        }

        Assert.True(rates[0][0] > 0 && model.Modes.Ages);
    }

    // A sole leg without spread of the load: the bearing carries the static force alone, outer bearing (1 + e/s), ISO 281.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(25, 0.2)]
    public void The_bearing_carries_the_static_force_of_what_is_inboard_by_its_lever(double offset, double outboard)
    {
        Scenario scenario = Set(Basis, (Quantities.WheelOffset, offset), (Quantities.OutboardShare, outboard),
            (Quantities.RoughnessFactor, 1e-12));
        (_, Workspace workspace) = Median(scenario);
        DamageColumns c = workspace.Damage;
        double force = (c.SprungMassKg[0] + (1 - outboard) * c.UnsprungMassKg[0]) * Gravity;
        double factor = Math.Max(Math.Abs(1 + (-30 + offset) / 70), Math.Abs((-30 + offset) / 70));
        double expected = Math.Pow(factor * force / 14_000, 10.0 / 3) / (2 * Math.PI * 0.350);
        Near.Relative(expected * 1e3 / 1e6, workspace.Rates!.Of(BearingMode.Name)[0][0], 2e-5);
    }

    // Clearance under load = empty less m g / (ks + helper); strikes at the rate of Rice (1944) raise both damage and first yield.
    [Theory]
    [InlineData(0)]
    [InlineData(15)]
    public void A_bump_stop_sees_the_helper_spring_and_adds_to_damage_and_to_yield(double helper)
    {
        Scenario without = Set(Basis, (Quantities.HelperSpringRate, helper), (Quantities.YieldStrength, 225), (Quantities.Payload, 300));
        Scenario with = ThreeModes.With(without, (Quantities.BumpClearance, new Value.Certain(90)),
            (Quantities.BumpStopRate, new Value.Certain(300)));
        (_, Workspace plain) = Median(without);
        (_, Workspace stopped) = Median(with);
        double payload = In(with, Quantities.Payload) * In(with, Quantities.PayloadShare);
        double clearance = 0.090 - payload * Gravity / (1000 * (In(with, Quantities.SpringRate) + helper));
        Near.Relative(clearance, stopped.Damage.BumpClearanceM[0], 1e-12);
        Assert.True(stopped.DamagePerKm[0] > 1.0001 * plain.DamagePerKm[0]);
        double more = stopped.Rates!.Of(YieldMode.Name)[0][0] - plain.Rates!.Of(YieldMode.Name)[0][0];
        Near.Relative(StrikesBeyond(stopped.Damage, clearance, 225), more, 2e-3);
    }

    // A scatter that is certain is a limit: nothing has failed before it, everything after.
    [Fact]
    public void A_certain_scatter_ends_the_life_at_its_limit()
    {
        Scenario scenario = Set(Basis, (Quantities.BearingScatter, 2), (Quantities.YieldScatter, 3));
        (LifeModel model, Workspace workspace) = Median(scenario);
        double bearingKm = 2 / workspace.Rates!.Of(BearingMode.Name)[0][0];
        double yieldKm = 3 / workspace.Rates.Of(YieldMode.Name)[0][0];
        (int mode, double km) = bearingKm < yieldKm ? (2, bearingKm) : (1, yieldKm);
        Assert.Equal(0, model.Chances.Hazard(mode, workspace, 0, 0.999 * km));
        Assert.Equal(1, model.Chances.FailureProbability(workspace, 0, 1.001 * km));
        Assert.True(workspace.LifeKm[0] <= km * (1 + 1e-9));
    }

    // Damage while a wall rusts, against 40 vehicles of the wall that is left: the integral of the scalar kernel's damage.
    [Theory]
    [InlineData(0.8, 0)]
    [InlineData(0, 0.5)]
    [InlineData(0.8, 0.5)]
    public void Ageing_is_the_integral_over_vehicles_of_every_age(double rust, double wear)
    {
        Scenario basis = FiveLegs.Scenario with { RequiredKm = 100_000 };
        (_, Workspace aged) = Median(ThreeModes.With(
            basis, (Quantities.CorrosionRate, new Value.Certain(rust)), (Quantities.DamperWear, new Value.Certain(wear))));
        const int Slices = 40;
        double sum = 0;
        for (int i = 0; i < Slices; i++)
        {
            double age = (i + 0.5) / Slices;
            double damper = In(basis, Quantities.DamperRate) * Math.Pow(1 - wear, age);
            sum += Median(Set(basis, (Quantities.CorrosionLoss, rust * age), (Quantities.DamperRate, damper))).Workspace.DamagePerKm[0]
                / Slices;
        }

        Near.Relative(sum, aged.DamagePerKm[0], 6e-3); // measured 5.7e-3 for both at once, 2.3e-3 for wear, below 1e-3 for rust
        Near.Relative(aged.DamagePerKm[0], aged.DamageByLeg.Sum(l => l[0]), 1e-12);
    }

    private static double Rice(DamageColumns c, double stressPerForce, double damping, double yield)
    {
        RideParameters ride = c.RideOf(0);
        ride = ride with { DamperNsPerM = ride.DamperNsPerM * damping };
        double still = stressPerForce * (ride.SprungKg + (1 - ride.OutboardShare) * ride.UnsprungKg) * Gravity;
        double rate = 0;
        foreach (LegColumns leg in c.Legs)
        {
            ModeMoments m = Moments(c, leg, ride);
            double sd = stressPerForce * Math.Sqrt(m.Force0);
            double crossings = Math.Sqrt(m.Force2 / m.Force0) * (Math.Exp(-Math.Pow((yield - still) / sd, 2) / 2)
                + Math.Exp(-Math.Pow((yield + still) / sd, 2) / 2));
            rate += leg.Share[0] * crossings * 1000 / leg.SpeedMPerS[0];
        }

        return rate;
    }

    private static double StrikesBeyond(DamageColumns c, double clearance, double yield)
    {
        RideParameters ride = c.RideOf(0);
        double level = yield / ((YieldColumns)c.Modes[0]).NominalStressMPaPerN[0]
            - (ride.SprungKg + (1 - ride.OutboardShare) * ride.UnsprungKg) * Gravity;
        return c.Legs.Sum(leg => leg.Share[0] * 1000 / leg.SpeedMPerS[0]
            * StrikeDamage.ExceedancesPerSecond(ride, Moments(c, leg, ride), new BumpStop(clearance, 300e3), level));
    }

    private static ModeMoments Moments(DamageColumns c, LegColumns leg, RideParameters ride)
    {
        var gains = new RideGains[FrequencyGrid.Points];
        ModeMoments.FillGains(ride, gains);
        return ModeMoments.OnRoad(gains, leg.SpeedMPerS[0], c.ContactLengthM[0], leg.RoughnessM3[0], c.Waviness[0]);
    }

    private static double In(Scenario scenario, Quantity quantity) => scenario.Find(quantity)?.Value switch
    {
        null => quantity.Default!.Nominal,
        Value.Uncertain u => u.Distribution.Median,
        var certain => certain.Nominal,
    };

    private static Scenario Set(Scenario scenario, params (Quantity Quantity, double Value)[] values) => values.Aggregate(
        scenario,
        (s, v) => ThreeModes.With(s with { Inputs = [.. s.Inputs.Where(i => i.Quantity != v.Quantity)] },
            (v.Quantity, new Value.Certain(v.Value))));

    private static (LifeModel Model, Workspace Workspace) Median(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            for (int i = 0; i < factor.ColumnNames.Length; i++)
            {
                values[factor.FirstColumn + i][0] = factor.Median[i];
            }
        }

        model.Evaluate(values, 1, workspace);
        return (model, workspace);
    }
}
