using AxleRisk.Core.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class BinomialIntervalTests
{
    // The closed form. 4/20 is the example of the NIST/SEMATECH e-Handbook 7.2.4.1; 81/263 to 1/29 are those of Newcombe 1998 (from
    // memory). Printed to 1e-10 absolute.
    [Theory]
    [InlineData(4, 20, .90, .0931180166, .3783766858)]
    [InlineData(81, 263, .95, .255288519878, .366209576983)]
    [InlineData(15, 148, .95, .0623863995, .1604872417)]
    [InlineData(0, 20, .95, 0, .161125158053)]
    [InlineData(1, 29, .95, .0061132143, .1717552188)]
    [InlineData(0, 10000, .95, 0, 3.83998370677e-4)]
    [InlineData(3, 1000, .95, 1.02078388114e-3, 8.7830140535e-3)]
    public void Intervals_equal_the_reference(long x, long n, double confidence, double low, double high)
    {
        Interval wilson = BinomialInterval.Wilson(x, n, confidence);
        Assert.Equal(low, wilson.Low, 1e-10);
        Assert.Equal(high, wilson.High, 1e-10);
    }

    [Fact]
    public void No_failure_in_ten_thousand_keeps_all_digits() => // z^2 / (n + z^2); all printed digits
        Assert.Equal(3.83998370677e-4, BinomialInterval.Wilson(0, 10_000).High, 5.1e-16);

    [Property(MaxTest = 300)]
    public void Intervals_contain_the_estimate_and_mirror_when_failures_are_counted(ushort a, ushort b)
    {
        long n = 1 + Math.Max(a, b), x = Math.Min(a, b);
        Interval of = BinomialInterval.Wilson(x, n), mirrored = BinomialInterval.Wilson(n - x, n);
        Assert.InRange(of.Estimate, of.Low, of.High);
        Assert.InRange(of.Low, 0, 1);
        Assert.InRange(of.High, 0, 1);
        Assert.Equal(1 - of.High, mirrored.Low, 1e-12);
        Assert.Equal(1 - of.Low, mirrored.High, 1e-12);
    }

    [Fact]
    public void Impossible_arguments_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Wilson(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Wilson(-1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Wilson(11, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Wilson(1, 10, double.NaN));
    }
}
