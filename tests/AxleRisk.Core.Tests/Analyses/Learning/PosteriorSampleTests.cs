using AxleRisk.Core.Analyses.Learning;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>A weighted sample of four rows, by hand.</summary>
public class PosteriorSampleTests
{
    // In order of the values the weights are 0.1, 0.4, 0.2, 0.3: the middles of the rows lie at 0.05, 0.3, 0.6 and 0.85.
    private static readonly double[] Values = [30, 10, 40, 20];

    private static readonly PosteriorSample Sample = Of(0.2, 0.1, 0.3, 0.4);

    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.05, 10)]
    [InlineData(0.175, 15)]
    [InlineData(0.3, 20)]
    [InlineData(0.5, 26.666666666666668)]
    [InlineData(0.6, 30)]
    [InlineData(0.85, 40)]
    [InlineData(1, 40)]
    public void Quantiles_are_straight_between_the_middles_of_rows(double p, double value) =>
        Assert.Equal(value, Assert.Single(Sample.Quantiles(Values, p)), 1e-9);

    // Kong 1992: of four equal weights 4, of these 1 / 0.3.
    [Fact]
    public void Means_and_the_effective_size_are_those_of_the_weights()
    {
        Assert.Equal(4, Of(1, 1, 1, 1).EffectiveSize, 1e-12);
        Assert.Equal(1 / 0.3, Sample.EffectiveSize, 1e-9);
        Assert.Equal(6 + 1 + 12 + 8, Sample.Mean(row => Values[row]), 1e-9);
        Assert.Equal(1, Sample.Weights.Sum(), 1e-12);
    }

    [Fact]
    public void A_row_whose_weight_is_no_number_has_none() => Assert.Equal([0.5, 0, 0.5, 0], Of(1, double.NaN, 1, 0).Weights);

    // Ten places 0.05, 0.15 ... among 0.2, 0.3, 0.6 and 1; two at 0.45 and 0.95.
    [Fact]
    public void Rows_are_drawn_as_often_as_they_weigh()
    {
        Assert.Equal([0, 0, 1, 2, 2, 2, 3, 3, 3, 3], Sample.Draw(10, 0.5));
        Assert.Equal([2, 3], Sample.Draw(2, 0.9));
        Assert.Equal([0, 2], Sample.Draw(2, 0));
    }

    private static PosteriorSample Of(params double[] weights) =>
        new([0, 0, 0, 0], [Values], [.. weights.Select(w => Math.Log(w) - 500)], [], [0, 0, 0, 0]);
}
