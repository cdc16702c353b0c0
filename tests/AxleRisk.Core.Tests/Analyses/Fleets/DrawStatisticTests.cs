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
