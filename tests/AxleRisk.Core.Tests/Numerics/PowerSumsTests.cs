using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public sealed class PowerSumsTests
{
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, sum of squared deviations 32 (a schoolbook example).
    [Fact]
    public void Mean_and_standard_error_are_those_of_the_values()
    {
        PowerSums first = default(PowerSums).Plus(2).Plus(4).Plus(4), rest = default(PowerSums).Plus(4).Plus(5).Plus(5).Plus(7).Plus(9);
        PowerSums all = first.Plus(rest);
        Assert.Equal(new PowerSums(8, 40, 232), all);
        double error = Math.Sqrt(32.0 / 7 / 8);
        Assert.Equal(error, all.StandardError, 1e-14);
        Interval mean = all.MeanInterval();
        Assert.Equal((5.0, 5 - (1.959963984540054 * error), 5 + (1.959963984540054 * error)), (mean.Estimate, mean.Low, mean.High));
    }

    [Fact]
    public void The_mean_of_probabilities_keeps_between_0_and_1()
    {
        PowerSums few = default(PowerSums).Plus(0.01).Plus(0.03);
        Interval interval = few.PositiveMeanInterval();
        double spread = Math.Exp(1.959963984540054 * 0.01 / 0.02); // standard error |a - b| / 2
        Assert.Equal(0.02, interval.Estimate, 1e-16);
        Assert.Equal(0.02 / spread, interval.Low, 1e-15);
        Assert.Equal(0.02 * spread, interval.High, 1e-15);
        Assert.Equal(1, default(PowerSums).Plus(0.99).Plus(0.5).PositiveMeanInterval().High);
        Assert.Equal(new Interval(0.3, 0, 1), default(PowerSums).Plus(0.3).PositiveMeanInterval());
        Assert.Equal(new Interval(0, 0, 0), default(PowerSums).Plus(0).Plus(0).PositiveMeanInterval());
        Assert.Equal((0.3, double.NaN),
            (default(PowerSums).Plus(0.3).MeanInterval().Estimate, default(PowerSums).Plus(0.3).MeanInterval().Low));
        Assert.Equal(0, default(PowerSums).Plus(0.1).Plus(0.1).Plus(0.1).StandardError, 1e-9);
    }

    // Kish's effective number (sum)^2 / sum of squares of k equal terms among n is k: 50 are enough, of small samples half of all.
    [Theory]
    [InlineData(50, 1_000_000, false)]
    [InlineData(49, 1_000_000, true)]
    [InlineData(10, 20, false)]
    [InlineData(9, 20, true)]
    public void Fifty_terms_carry_a_small_mean(int terms, long rows, bool few)
    {
        const double Term = 1e-6;
        var sums = new PowerSums(rows, terms * Term, terms * Term * Term * (few ? 1.0000001 : 0.9999999));
        Assert.Equal(few, FewTerms.Carry(sums, 5e-4));
        Assert.False(FewTerms.Carry(sums, 1e-3));
        Assert.True(FewTerms.Carry(new PowerSums(rows, 0, 0), 0));
    }

    [Fact]
    public void A_bound_adds_the_rule_of_three()
    {
        Interval bound = FewTerms.Bound(new Interval(1e-6, 1e-7, 1e-5), 1000);
        Assert.Equal((double.NaN, 0, 1e-5 + 3e-3), (bound.Estimate, bound.Low, bound.High));
        Assert.Equal(1, FewTerms.Bound(new Interval(0, 0, 0), 2).High);
    }
}
