using AxleRisk.Core.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class BinomialIntervalTests
{
    // Clopper-Pearson: R 4.2.2 qbeta; Wilson: closed form. 4/20 is the example of the NIST/SEMATECH e-Handbook 7.2.4.1,
    // 682/925 of R's binom.test; 81/263 to 1/29 are those of Newcombe 1998 (from memory). Printed to 1e-10 absolute.
    [Theory]
    [InlineData(4, 20, .90, .0713538843, .4010281173, .0931180166, .3783766858)]
    [InlineData(81, 263, .95, .252736745585, .367621922601, .255288519878, .366209576983)]
    [InlineData(15, 148, .95, .0578440101, .1616504903, .0623863995, .1604872417)]
    [InlineData(0, 20, .95, 0, .168433470983, 0, .161125158053)]
    [InlineData(1, 29, .95, .0008726469, .1776442955, .0061132143, .1717552188)]
    [InlineData(0, 10000, .95, 0, 3.68819914619e-4, 0, 3.83998370677e-4)]
    [InlineData(3, 1000, .95, 6.1909993165e-4, 8.74202323848e-3, 1.02078388114e-3, 8.7830140535e-3)]
    public void Intervals_equal_the_reference(
        long x, long n, double confidence, double exactLow, double exactHigh, double wilsonLow, double wilsonHigh)
    {
        Interval exact = BinomialInterval.ClopperPearson(x, n, confidence), wilson = BinomialInterval.Wilson(x, n, confidence);
        Assert.Equal(exactLow, exact.Low, 1e-10);
        Assert.Equal(exactHigh, exact.High, 1e-10);
        Assert.Equal(wilsonLow, wilson.Low, 1e-10);
        Assert.Equal(wilsonHigh, wilson.High, 1e-10);
    }

    [Fact]
    public void The_exact_interval_of_the_binomial_test_example_is_met()
    {
        Interval exact = BinomialInterval.ClopperPearson(682, 925); // R binom.test help, recomputed to 1e-12
        Assert.Equal(.707668264079, exact.Low, 1e-12);
        Assert.Equal(.765406558242, exact.High, 1e-12);
    }

    [Fact]
    public void No_failure_in_ten_thousand_keeps_all_digits() // 1 - 0.025^(1/10000), R; all printed digits
    {
        Assert.Equal(3.68819914619e-4, BinomialInterval.ClopperPearson(0, 10_000).High, 5.1e-16);
        Assert.Equal(3.83998370677e-4, BinomialInterval.Wilson(0, 10_000).High, 5.1e-16);
    }

    // Each limit leaves exactly alpha/2, so the tails there must return it. 1e-9 relative leaves room for 1e8 trials; where
    // p is near 1 its own rounding, 1e-16 times n trials times z, moves the tail by a few 1e-8.
    [Theory]
    [InlineData(1, 100_000_000, 1e-9)]
    [InlineData(1234, 100_000_000, 1e-9)]
    [InlineData(50_000_000, 100_000_000, 1e-9)]
    [InlineData(99_999_990, 100_000_000, 1e-7)]
    public void Limits_of_long_runs_leave_the_right_tails(long x, long n, double precision)
    {
        Interval exact = BinomialInterval.ClopperPearson(x, n, 0.99);
        Assert.Equal(0.005, BinomialTail.AtLeast(x, n, exact.Low), 0.005 * precision);
        Assert.Equal(0.005, BinomialTail.AtMost(x, n, exact.High), 0.005 * precision);
    }

    [Property(MaxTest = 300)]
    public void Intervals_contain_the_estimate_and_mirror_when_failures_are_counted(ushort a, ushort b)
    {
        long n = 1 + Math.Max(a, b), x = Math.Min(a, b);
        foreach (Func<long, long, Interval> make in
            (Func<long, long, Interval>[])[(i, m) => BinomialInterval.Wilson(i, m), (i, m) => BinomialInterval.ClopperPearson(i, m)])
        {
            Interval of = make(x, n), mirrored = make(n - x, n);
            Assert.InRange(of.Estimate, of.Low, of.High);
            Assert.InRange(of.Low, 0, 1);
            Assert.InRange(of.High, 0, 1);
            Assert.Equal(1 - of.High, mirrored.Low, 1e-12);
            Assert.Equal(1 - of.Low, mirrored.High, 1e-12);
        }
    }

    [Fact]
    public void Impossible_arguments_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Wilson(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Wilson(-1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.ClopperPearson(11, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.ClopperPearson(1, 10, double.NaN));
    }
}
