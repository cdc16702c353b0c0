using AxleRisk.Core.Damage.Bearings;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Rating life, reliability and equivalent load of a rolling bearing.</summary>
public class BearingLifeTests
{
    // L10 = (C/P)^p Mrev, ISO 281: worked numbers computed with scipy from the formula.
    [Theory]
    [InlineData(61.8, 5, 3.0, 1888.232256)]
    [InlineData(140, 25, 10.0 / 3, 311.860298)]
    [InlineData(92.3, 18.5, 10.0 / 3, 212.2103567)]
    public void The_rating_life_is_that_of_ISO_281(double rating, double load, double exponent, double million) =>
        Near.Relative(million, BearingLife.RatingMillionRevolutions(rating, load, exponent), 1e-8);

    // Shigley's Mechanical Engineering Design, example on catalogue ratings (from memory): 400 lbf, 5000 h at 1725 rpm, ball,
    // needs 3211 lbf.
    [Fact]
    public void The_textbook_ball_bearing_lasts_5000_hours_at_1725_rpm() =>
        Near.Relative(5000, 1e6 * BearingLife.RatingMillionRevolutions(3211.41755, 400, BearingLife.BallExponent) / (60 * 1725), 1e-7);

    // ISO 281:2007, table of the life modification factor for reliability a1.
    [Theory]
    [InlineData(0.90, 1)]
    [InlineData(0.95, 0.64)]
    [InlineData(0.96, 0.55)]
    [InlineData(0.97, 0.47)]
    [InlineData(0.98, 0.37)]
    [InlineData(0.99, 0.25)]
    public void The_reliability_factor_is_that_of_ISO_281(double reliability, double a1) =>
        Assert.Equal(a1, Math.Round(BearingLife.ReliabilityFactor(reliability), 2), 12);

    [Fact]
    public void The_default_scatter_of_the_scenario_is_the_distribution_of_the_reliability_factor()
    {
        var scatter = (Weibull)Assert.IsType<Value.Uncertain>(Quantities.BearingScatter.Default).Distribution;
        Near.Relative(BearingLife.WeibullScale, scatter.Scale, 1e-12);
        foreach (double r in new[] { 0.5, 0.9, 0.95, 0.99, 0.999 })
        {
            Near.Relative(BearingLife.ReliabilityFactor(r), scatter.UpperQuantile(r), 1e-12);
        }
    }

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
