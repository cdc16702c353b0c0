using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>What must hold for any vehicle on any road.</summary>
public class KernelPropertiesTests
{
    private const int Cases = 200;

    // The closed forms are smooth to 1e-12 at worst; a step of a hundredth changes damage by 1e-3 and more.
    private const double Step = 1.01;

    [Property(MaxTest = Cases)]
    public Property Damage_falls_with_the_wall() =>
        Everywhere((v, leg) => Damage(v with { WallMm = Step * v.WallMm }, leg) < Damage(v, leg));

    [Property(MaxTest = Cases)]
    public Property Damage_rises_with_the_arm() =>
        Everywhere((v, leg) => Damage(v with { ArmMm = Step * v.ArmMm }, leg) > Damage(v, leg));

    [Property(MaxTest = Cases)]
    public Property Damage_rises_with_the_stress_factor() =>
        Everywhere((v, leg) => Damage(v with { StressFactor = Step * v.StressFactor }, leg) > Damage(v, leg));

    [Property(MaxTest = Cases)]
    public Property Damage_rises_with_roughness() =>
        Everywhere((v, leg) => Damage(v, leg with { Gd1E6 = Step * leg.Gd1E6 }) > Damage(v, leg));

    // Roughness only scales the spectrum, so its square root is a factor on stress.
    [Property(MaxTest = Cases)]
    public Property Four_times_the_roughness_is_twice_the_stress() => Everywhere((v, leg) =>
        Math.Abs(Damage(v, leg with { Gd1E6 = 4 * leg.Gd1E6 }) / Damage(v with { StressFactor = 2 * v.StressFactor }, leg) - 1) < 1e-11);

    // In point contact speed only scales the spectrum: Gd(f/v)/v = v^(w-1) Gd(f), by which the variance grows.
    [Property(MaxTest = Cases)]
    public Property In_point_contact_the_variance_grows_with_speed_to_the_waviness_less_one() => Everywhere((v, leg) =>
    {
        v = v with { ContactMm = 0 };
        double ratio = Variance(v, leg with { KmPerH = 2 * leg.KmPerH }) / Variance(v, leg);
        return Math.Abs(ratio / Math.Pow(2, v.Waviness - 1) - 1) < 1e-11;
    });

    [Property(MaxTest = Cases)]
    public Property The_damage_of_the_use_is_the_convex_combination_of_the_legs() => Prop.ForAll(
        Vehicles().ToArbitrary(), Roads().ArrayOf(3).ToArbitrary(), Gen.Choose(0, 100).ArrayOf(2).ToArbitrary(), (v, legs, cuts) =>
        {
            double[] shares = [cuts.Min() / 100.0, (cuts.Max() - cuts.Min()) / 100.0, (100 - cuts.Max()) / 100.0];
            double[] alone = [.. legs.Select(leg => Damage(v, leg))];
            double use = Rows.DamagePerKm(v, [.. legs.Select((leg, i) => leg with { Share = shares[i] })]);
            double combination = shares.Zip(alone, (s, d) => s * d).Sum();
            return Math.Abs(use - combination) <= 1e-13 * combination
                && use >= alone.Min() * (1 - 1e-13) && use <= alone.Max() * (1 + 1e-13);
        });

    private static Property Everywhere(Func<Vehicle, RoadLeg, bool> holds) =>
        Prop.ForAll(Vehicles().ToArbitrary(), Roads().ToArbitrary(), holds);

    private static double Damage(Vehicle v, RoadLeg leg) => Rows.DamagePerKm(v, leg with { Share = 1 });

    private static double Variance(Vehicle v, RoadLeg leg) =>
        ScalarKernel.LegDetails(Rows.Of([v], leg), 0, [Rows.ClassE], CountingMethod.Dirlik)[0].Plain.Moments.M0;

    private static Gen<Vehicle> Vehicles() =>
        from sprung in Between(300, 1200)
        from unsprung in Between(50, 200)
        from spring in Between(15, 120)
        from damper in Between(0.3, 8)
        from tyre in Between(150, 700)
        from outboard in Between(0, 1)
        from wall in Between(3, 12)
        from waviness in Between(1.5, 2.5)
        select new Vehicle
        {
            SprungKg = sprung,
            UnsprungKg = unsprung,
            SpringNPerMm = spring,
            DamperNsPerMm = damper,
            TyreNPerMm = tyre,
            OutboardShare = outboard,
            WallMm = wall,
            Waviness = waviness,
        };

    private static Gen<RoadLeg> Roads() =>
        from roughness in Between(16, 8192)
        from speed in Between(10, 110)
        select new RoadLeg(1, roughness, speed);

    private static Gen<double> Between(double from, double to) => Gen.Choose(0, 10_000).Select(i => from + (to - from) * i / 10_000);
}
