using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public sealed class PoissonQuantileTests
{
    // Counts at evenly spread probabilities have the mean and the variance of the distribution, below the switch at 300 and above.
    [Theory]
    [InlineData(0.2)]
    [InlineData(7)]
    [InlineData(299)]
    [InlineData(301)]
    [InlineData(5000)]
    public void Drawn_counts_have_the_mean_and_the_variance(double mean)
    {
        const int Draws = 20_000;
        double[] counts = [.. Enumerable.Range(0, Draws).Select(i => PoissonQuantile.Of(mean, (i + 0.5) / Draws))];
        Assert.All(counts, c => Assert.Equal(Math.Floor(c), c));
        Assert.Equal(mean, counts.Average(), 0.01 + (2e-6 * mean));
        Assert.Equal(mean, counts.Average(c => (c - mean) * (c - mean)), 0.005 * mean + 0.1);
    }

    // By hand: e^-2 = 0.135, then 0.406, 0.677, 0.857.
    [Theory]
    [InlineData(0.1, 0)]
    [InlineData(0.14, 1)]
    [InlineData(0.4, 1)]
    [InlineData(0.41, 2)]
    [InlineData(0.85, 3)]
    public void The_quantile_is_the_least_count_that_suffices(double p, double count) => Assert.Equal(count, PoissonQuantile.Of(2, p));

    [Fact]
    public void Of_nothing_nothing_is_drawn() => Assert.Equal(0, PoissonQuantile.Of(0, 0.99));
}
