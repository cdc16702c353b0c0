using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>The choice and the sample, against values worked by hand.</summary>
public class DiscreteTests
{
    private static readonly NumberChoice Choice = new([30, 10, 20], [1, 2, 1]);
    private static readonly Empirical Sample = new([4, 1, 3, 2, 10]);

    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.3, 10)]
    [InlineData(0.5, 10)]
    [InlineData(0.5000001, 20)]
    [InlineData(0.75, 20)]
    [InlineData(0.76, 30)]
    [InlineData(1, 30)]
    public void A_choice_gives_each_value_its_share_of_the_unit_interval(double p, double expected) =>
        Assert.Equal(expected, Choice.Quantile(p));

    [Fact]
    public void A_choice_normalises_its_weights()
    {
        Assert.Equal([0.5, 0.25, 0.25], Choice.Weights);
        Assert.Equal(17.5, Choice.Mean);
        Assert.Equal(Math.Sqrt(68.75), Choice.StandardDeviation, 1e-14); // (7.5^2 * 2 + 2.5^2 + 12.5^2) / 4
        Assert.Equal(0.25, Choice.Density(20));
        Assert.Equal(0, Choice.Density(21));
        Assert.Equal([0, 0.5, 0.5, 0.75, 1], new double[] { 9, 10, 15, 20, 30 }.Select(Choice.Cumulative));
        Assert.False(Choice.IsContinuous);
    }

    [Fact]
    public void Ten_equal_weights_reach_1_in_spite_of_rounding()
    {
        var choice = new NumberChoice([.. Enumerable.Range(1, 10).Select(i => (double)i)], [.. Enumerable.Repeat(0.1, 10)]);
        Assert.Equal(1, choice.Cumulative(10));
        Assert.Equal(10, choice.Quantile(Math.BitDecrement(1.0)));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.25, 2)]
    [InlineData(0.3, 2.2)]
    [InlineData(0.5, 3)]
    [InlineData(0.9, 7.6)]
    [InlineData(1, 10)]
    public void A_sample_is_interpolated_between_its_ordered_values(double p, double expected)
    {
        Assert.Equal(expected, Sample.Quantile(p), 1e-14);
        Assert.Equal(p, Sample.Cumulative(expected), 1e-14);
    }

    [Fact]
    public void Mean_and_standard_deviation_of_a_sample_are_those_of_its_quantile()
    {
        // Gaps 1-2, 2-3, 3-4, 4-10, each with probability 1/4: means 1.5, 2.5, 3.5, 7; squares 7/3, 19/3, 37/3, 52.
        Assert.Equal(14.5 / 4, Sample.Mean, 1e-14);
        Assert.Equal(Math.Sqrt((73.0 / 4) - Math.Pow(14.5 / 4, 2)), Sample.StandardDeviation, 1e-14);
    }

    [Fact]
    public void A_value_measured_more_than_once_has_a_probability()
    {
        var ties = new Empirical([1, 1, 2, 2, 2, 5]);
        Assert.Equal(0.2, ties.Density(1), 1e-15);
        Assert.Equal(0.4, ties.Density(2), 1e-15);
        Assert.Equal(0, ties.Density(5));
        Assert.Equal(0.8, ties.Cumulative(2), 1e-15);
        Assert.Equal(0.2, ties.Cumulative(1), 1e-15);
    }

    [Fact]
    public void A_sample_of_equal_values_is_rejected()
    {
        Assert.Contains("two different", Assert.Throws<DistributionException>(() => new Empirical([2, 2, 2])).Message);
        Assert.Throws<DistributionException>(() => new Empirical([]));
    }

    [Fact]
    public void A_choice_of_lists_of_unequal_length_is_rejected() =>
        Assert.Contains("3 values but 2 weights", Assert.Throws<DistributionException>(() => new NumberChoice([1, 2, 3], [1, 1])).Message);
}
