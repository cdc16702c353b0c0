using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>The benchmark case of five legs with every factor at its median.</summary>
public class BenchmarkCaseTests
{
    private static readonly RoadLeg[] Legs =
        [new(0.20, 16, 80), new(0.30, 64, 60), new(0.25, 256, 50), new(0.20, 1024, 40), new(0.05, 4096, 25)];

    // Independent numpy implementation of the same equations: 486,590 km, 6 digits.
    [Fact]
    public void The_median_life_is_486590_km() => Near.Relative(486_590, 1 / Rows.DamagePerKm(new(), Legs), 1e-5);

    // Damage per km driven on each leg and its M0 (MPa^2): independent implementation of the same equations that solves the two masses
    // as a complex system and gets the gamma functions by series and continued fraction; double precision.
    [Theory]
    [InlineData(0, 5.379518292796506e-10, 2.946233481978359)]
    [InlineData(1, 1.0291295064925458e-08, 8.660455743909205)]
    [InlineData(2, 2.313443785634474e-07, 28.32099520409715)]
    [InlineData(3, 3.899267741793518e-06, 87.74390366012054)]
    [InlineData(4, 2.4284658983274947e-05, 195.75678847503315)]
    public void Each_leg_does_the_damage_of_an_independent_implementation(int leg, double damagePerKm, double variance)
    {
        LegDetail detail = ScalarKernel.LegDetails(Rows.Of([new()], Legs), 0, [Rows.ClassE], CountingMethod.Dirlik)[leg];
        Near.Relative(variance, detail.Plain.Moments.M0, 1e-11);
        Near.Relative(damagePerKm, detail.DamagePerKm, 1e-10);
    }
}
