using AxleRisk.Core.Damage.Bearings;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Rating life, reliability and equivalent load of a rolling bearing.</summary>
public class BearingLifeTests
{
    private static Weibull Scatter => (Weibull)Assert.IsType<Value.Uncertain>(Quantities.BearingScatter.Default).Distribution;

    // ISO 281:2007, table of the life modification factor for reliability a1: the life that a share of bearings reaches.
    [Theory]
    [InlineData(0.90, 1)]
    [InlineData(0.95, 0.64)]
    [InlineData(0.96, 0.55)]
    [InlineData(0.97, 0.47)]
    [InlineData(0.98, 0.37)]
    [InlineData(0.99, 0.25)]
    public void The_default_scatter_of_the_scenario_has_the_reliability_factors_of_ISO_281(double reliability, double a1) =>
        Assert.Equal(a1, Math.Round(Scatter.UpperQuantile(reliability), 2), 12);

    // The same in closed form: 0.05 + 0.95 (ln R / ln 0.9)^(2/3).
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.9)]
    [InlineData(0.999)]
    public void The_default_scatter_has_the_closed_form_of_the_reliability_factor(double reliability) =>
        Near.Relative(0.05 + (0.95 * Math.Pow(Math.Log(reliability) / Math.Log(0.9), 2 / 3.0)), Scatter.UpperQuantile(reliability), 1e-12);

    // ((sum q n P^p)/(sum q n))^(1/p) of a duty cycle, computed with scipy: loads 4, 6, 9, revolutions 0.3*800, 0.5*600, 0.2*300.
    [Theory]
    [InlineData(3.0, 5.9107149920)]
    [InlineData(10.0 / 3, 5.9817127964)]
    public void Loads_of_no_spread_have_the_equivalent_load_of_a_duty_cycle(double exponent, double expected)
    {
        (double Revolutions, double Load)[] duty = [(240, 4), (300, 6), (60, 9)];
        double power = duty.Sum(d => d.Revolutions * BearingLife.MeanPower(d.Load, 0, exponent)) / duty.Sum(d => d.Revolutions);
        Near.Relative(expected, Math.Pow(power, 1 / exponent), 1e-10);
    }

    // Third absolute moment of a normal: mean^3 + 3 mean sd^2 where nearly all lies above 0; about 0 it is sqrt(8/pi) sd^3 (textbook).
    [Theory]
    [InlineData(5, 1, 140, 1e-6)]
    [InlineData(10, 1, 1030, 1e-9)]
    [InlineData(0, 2, 12.7661529737, 4e-3)]
    public void The_mean_of_a_power_is_the_moment_of_the_normal(double mean, double sd, double expected, double tolerance) =>
        Near.Relative(expected, BearingLife.MeanPower(mean, sd, 3), tolerance);

    // Levers: the two loads add up to the wheel's force; half each with the wheel in the middle.
    [Theory]
    [InlineData(-30, 0.5)]
    [InlineData(0, 1)]
    [InlineData(30, 1.5)]
    [InlineData(-90, 1.5)]
    public void The_more_loaded_bearing_follows_the_lever(double overhang, double factor) =>
        Near.Relative(factor, BearingLife.LoadFactor(overhang, 60), 1e-15);
}
