using AxleRisk.Core.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;
using Interval = AxleRisk.Core.Numerics.Interval;

namespace AxleRisk.Core.Tests.Numerics;

public sealed class SummaryTests
{
    [Theory]
    [InlineData(1e-19)]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(486_590.17)]
    [InlineData(1e19)]
    public void A_value_is_read_back_within_the_stated_error(double value)
    {
        var histogram = new LogHistogram();
        histogram.AddLn(Math.Log(value));
        Assert.InRange(histogram.ValueOfRank(1) / value, Math.Exp(-1.001 * LogHistogram.RelativeError),
            Math.Exp(1.001 * LogHistogram.RelativeError));
    }

    [Fact]
    public void Zero_and_infinity_are_kept_apart()
    {
        var histogram = new LogHistogram();
        foreach (double x in new[] { 0, 1, double.PositiveInfinity })
        {
            histogram.AddLn(Math.Log(x));
        }

        Assert.Equal((3, 1, 1), (histogram.Count, histogram.Below, histogram.Above));
        Assert.Equal(0, histogram.ValueOfRank(1));
        Assert.Equal(double.PositiveInfinity, histogram.ValueOfRank(3));
        Assert.Equal(double.NaN, histogram.ValueOfRank(4));
        Assert.Equal(double.NaN, histogram.ValueOfRank(0));
    }

    [Fact]
    public void A_bin_holds_more_than_its_small_counter()
    {
        const int Many = 3 * 65_536 + 7;
        var histogram = new LogHistogram();
        for (int i = 0; i < Many; i++)
        {
            histogram.AddLn(0.5);
        }

        var other = new LogHistogram();
        other.AddLn(40);
        other.Add(histogram);
        Assert.Equal((Many, Many), (histogram.Count, Assert.Single(histogram.Filled).Count));
        Assert.Equal([Many, 1], other.Filled.Select(b => b.Count));
        histogram.Clear();
        Assert.Empty(histogram.Filled);
    }

    [Fact]
    public void A_sum_of_histograms_counts_every_value_once()
    {
        var one = new LogHistogram();
        foreach (double x in new[] { 0, 1, 1, double.PositiveInfinity })
        {
            one.AddLn(Math.Log(x));
        }

        var sum = new LogHistogram();
        sum.Add(one);
        sum.Add(one);
        Assert.Equal((8, 2, 2), (sum.Count, sum.Below, sum.Above));
        Assert.Equal(4, Assert.Single(sum.Filled).Count);
    }

    [Property]
    public Property Ranks_rise(PositiveInt count)
    {
        var histogram = new LogHistogram();
        for (int i = 0; i < count.Get; i++)
        {
            histogram.AddLn(Math.Sin(i) * 3);
        }

        double[] values = [.. Enumerable.Range(1, count.Get).Select(r => histogram.ValueOfRank(r))];
        return values.SequenceEqual(values.Order()).ToProperty();
    }

    [Fact]
    public void An_exact_sum_does_not_depend_on_its_order()
    {
        double[] addends = [.. Enumerable.Range(0, 5_000).Select(i => Math.Exp(-i / 100.0) * Math.Sin(i))];
        ExactSum forward = addends.Aggregate(default(ExactSum), (s, x) => s.Plus(x));
        ExactSum backward = addends.Reverse().Aggregate(default(ExactSum), (s, x) => s.Plus(x));
        Assert.Equal(forward, backward);
        Assert.Equal(CompensatedSum.Of(addends), forward.Value, 1e-15);
    }

    [Fact]
    public void A_mean_of_one_value_has_no_interval()
    {
        Assert.Equal(new Interval(0.25, 0, 1), default(PowerSums).Plus(0.25).PositiveMeanInterval());
        Assert.Equal(double.NaN, default(PowerSums).Plus(0.25).MeanInterval().Low);
    }

    [Fact]
    public void The_standard_error_is_that_of_the_textbook()
    {
        // Values 1, 2, 3, 4: mean 2.5, sample variance 5/3, standard error sqrt(5/12).
        PowerSums sums = new[] { 1.0, 2, 3, 4 }.Aggregate(default(PowerSums), (s, x) => s.Plus(x));
        Assert.Equal(2.5, sums.Mean);
        Assert.Equal(Math.Sqrt(5.0 / 12), sums.StandardError, 1e-15);
    }
}
