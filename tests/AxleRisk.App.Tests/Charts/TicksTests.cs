using AxleRisk.App.Charts;
using Xunit;

namespace AxleRisk.App.Tests.Charts;

public class TicksTests
{
    [Theory]
    [InlineData(0, 1, 5, "0 0.2 0.4 0.6 0.8 1")]
    [InlineData(0, 750_000, 4, "0 200k 400k 600k")]
    [InlineData(-0.3, 0.3, 6, "-0.3 -0.2 -0.1 0 0.1 0.2 0.3")]
    [InlineData(5.13, 6.87, 4, "5.5 6 6.5")]
    public void Linear_ticks_are_round(double low, double high, int most, string expected) =>
        Assert.Equal(expected, string.Join(' ', Ticks.On(new Scale(low, high, false), most).Select(Ticks.Label)));

    [Theory]
    [InlineData(1e-6, 1, 7, "1e-6 1e-5 1e-4 0.001 0.01 0.1 1")]
    [InlineData(1e-6, 1, 4, "1e-6 1e-4 0.01 1")]
    [InlineData(15_000, 750_000, 9, "20k 50k 100k 200k 500k")]
    public void Logarithmic_ticks_are_decades_or_parts_of_them(double low, double high, int most, string expected) =>
        Assert.Equal(expected, string.Join(' ', Ticks.On(new Scale(low, high, true), most).Select(Ticks.Label)));

    [Theory]
    [InlineData(0.001, 0.9, 9, "0.1 % 1 % 5 % 10 % 20 % 50 % 80 % 90 %")]
    [InlineData(0.001, 0.5, 4, "0.1 % 1 % 10 % 50 %")]
    [InlineData(1e-6, 0.99, 3, "1 % 50 % 99 %")]
    public void Ticks_of_a_probability_scale_are_round_and_keep_apart(double low, double high, int most, string expected) =>
        Assert.Equal(
            expected, string.Join(' ', Ticks.On(new Scale(low, high, false) { IsProbability = true }, most).Select(Ticks.Percent)));

    // Quantiles of the standard normal distribution, as in any table of it: 1 % -2.3263, 10 % -1.2816, 50 % 0.
    [Theory]
    [InlineData(0.01, 0)]
    [InlineData(0.1, (2.3263 - 1.2816) / 2.3263)]
    [InlineData(0.5, 1)]
    public void A_probability_scale_goes_by_the_normal_quantile(double p, double place)
    {
        var scale = new Scale(0.01, 0.5, false) { IsProbability = true };
        Assert.Equal(place, scale.Position(p), 4);
        Assert.Equal(p, scale.Value(scale.Position(p)), 12);
        Assert.True(double.IsNaN(scale.Position(0)) && double.IsNaN(scale.Position(1)));
    }

    [Fact]
    public void Places_and_values_belong_together()
    {
        foreach (Scale scale in new[] { new Scale(-3, 7, false), new Scale(0.01, 1000, true) })
        {
            Assert.Equal((0, 1), (scale.Position(scale.Low), Math.Round(scale.Position(scale.High), 12)));
            Assert.Equal(0.37, scale.Position(scale.Value(0.37)), 12);
        }

        Assert.True(double.IsNaN(new Scale(1, 10, true).Position(0)));
        Assert.Null(Scale.Of([double.NaN, double.PositiveInfinity], false));
        Assert.Null(Scale.Of([0, -1], true));
    }
}
