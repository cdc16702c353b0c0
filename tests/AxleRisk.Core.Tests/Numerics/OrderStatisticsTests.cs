using AxleRisk.Core.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class OrderStatisticsTests
{
    // Recomputed with exact binomial tails (R); ranks exact, coverage as printed.
    [Theory]
    [InlineData(20, .5, 6, 15, .9586105347)]
    [InlineData(100, .5, 40, 61, .9647998)]
    [InlineData(1000, .1, 82, 120, .9549071811)]
    [InlineData(10000, .1, 942, 1060, .9507872779)]
    [InlineData(500, .05, 16, 36, .9604987355)]
    public void Rank_intervals_equal_the_reference(long n, double p, long lower, long upper, double coverage)
    {
        RankInterval ranks = OrderStatistics.QuantileInterval(n, p);
        Assert.Equal((lower, upper), (ranks.Lower, ranks.Upper));
        Assert.Equal(coverage, ranks.Coverage, 1e-7);
    }

    [Property(MaxTest = 200)]
    public void Rank_intervals_are_the_closest_that_keep_both_tails(uint size, ushort probability)
    {
        long n = 1 + size % 100_000_000;
        double p = (probability + 0.5) / 65536;
        RankInterval ranks = OrderStatistics.QuantileInterval(n, p, 0.9);
        double tail = (1 - 0.9) / 2;
        Assert.InRange(BinomialTail.AtMost(ranks.Lower - 1, n, p), 0, tail);
        Assert.InRange(BinomialTail.AtLeast(ranks.Upper, n, p), 0, tail);
        Assert.True(BinomialTail.AtMost(ranks.Lower, n, p) > tail);
        Assert.True(BinomialTail.AtLeast(ranks.Upper - 1, n, p) > tail);
    }

    [Fact]
    public void A_sample_too_small_has_no_limit_on_that_side()
    {
        RankInterval ranks = OrderStatistics.QuantileInterval(10, .01);
        Assert.Equal(0, ranks.Lower);
        Assert.Equal(11, OrderStatistics.QuantileInterval(10, .99).Upper);
    }

    // Type 7 of Hyndman and Fan, the default of R quantile(1:10): .1 -> 1.9, .25 -> 3.25.
    [Fact]
    public void Sample_quantiles_interpolate_between_ranks()
    {
        double[] sorted = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
        Assert.Equal(1, OrderStatistics.Quantile(sorted, 0));
        Assert.Equal(1.9, OrderStatistics.Quantile(sorted, .1), 1e-15);
        Assert.Equal(3.25, OrderStatistics.Quantile(sorted, .25), 1e-15);
        Assert.Equal(10, OrderStatistics.Quantile(sorted, 1));
        Assert.Equal(double.PositiveInfinity, OrderStatistics.Quantile([1, double.PositiveInfinity, double.PositiveInfinity], .9));
    }

    [Fact]
    public void Impossible_arguments_are_refused()
    {
        Assert.Throws<ArgumentException>(() => OrderStatistics.Quantile([], .5));
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistics.Quantile([1.0], double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistics.QuantileInterval(10, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistics.QuantileInterval(0, .5));
    }
}
