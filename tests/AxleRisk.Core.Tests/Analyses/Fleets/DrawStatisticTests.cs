using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

/// <summary>What one number is made of the probabilities of outer draws.</summary>
public sealed class DrawStatisticTests
{
    [Theory]
    [InlineData(TargetBasis.Average)]
    [InlineData(TargetBasis.NinetyPercent)]
    public void Of_draws_that_never_fail_nothing_is_left(TargetBasis basis) =>
        Assert.Equal(new Interval(0, 0, 0), DrawStatistic.WithInterval(new DrawMeans([new double[32]]), basis));

    // Half of the variance between draws is the error of their inner ones (parts p + e and p - e): what is left of the spread
    // keeps the mean, also where nearly all fail. On the angular scale the spread is less by the root of what is not error.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(0.93)]
    public void The_error_of_inner_draws_goes_and_the_mean_stays(double about)
    {
        double[] p = [.. Enumerable.Range(0, 64).Select(i => about + (0.04 * (((i * 13 % 64) / 63.0) - 0.5)))];
        double[] e = [.. Enumerable.Range(0, 64).Select(i => i % 2 == 0 ? 0.01 : -0.01)];
        var means = new DrawMeans([[.. p.Zip(e, (a, b) => a + b)], [.. p.Zip(e, (a, b) => a - b)]]);
        Assert.InRange(means.ErrorShare, 0.3, 0.9);
        Assert.Equal(p.Average(), means.Corrected.Average(), 1e-9);
        double Spread(double[] of)
        {
            double[] angles = [.. of.Select(x => Math.Asin(Math.Sqrt(x)))];
            return angles.Max() - angles.Min();
        }

        Assert.Equal(Math.Sqrt(1 - means.ErrorShare), Spread(means.Corrected) / Spread(p), 1e-9);
    }

    // Of one value everywhere it is that value, for certain; of 0.1 and 0.3 by turns the mean 0.2, in every replicate.
    [Fact]
    public void Of_replicates_alike_nothing_is_in_doubt()
    {
        Interval one = DrawStatistic.WithInterval(new DrawMeans([[.. Enumerable.Repeat(0.2, 32)]]), TargetBasis.NinetyPercent);
        Interval mean = DrawStatistic.WithInterval(
            new DrawMeans([[.. Enumerable.Range(0, 32).Select(i => i % 2 == 0 ? 0.1 : 0.3)]]), TargetBasis.Average);
        foreach (double end in new[] { one.Low, one.Estimate, one.High, mean.Low, mean.Estimate, mean.High })
        {
            Assert.Equal(0.2, end, 1e-12);
        }
    }
}
