using AxleRisk.Core.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class BinomialMixtureTests
{
    // 2,000 midpoints in probability of beta(2, 18): the beta-binomial distribution (Skellam 1948). Values: scipy 1.10.1,
    // betabinom(100, 2, 18).
    private static readonly double[] Beta = [.. Enumerable.Range(0, 2_000).Select(i => BetaQuantile((i + 0.5) / 2_000))];

    [Theory]
    [InlineData(0, 0.024355504913829915)]
    [InlineData(5, 0.3099195162691954)]
    [InlineData(10, 0.605695492748424)]
    [InlineData(25, 0.9630474103702805)]
    public void A_beta_mixture_is_the_beta_binomial(long k, double expected) =>
        Assert.Equal(expected, new BinomialMixture(100, Beta).AtMost(k), 1e-4); // the midpoints leave about 0.1 / 2000 at the end

    [Theory]
    [InlineData(int.MaxValue)]
    [InlineData(250)]
    public void Its_interval_is_that_of_the_beta_binomial(int most) =>
        Assert.Equal((1L, 28L), new BinomialMixture(100, Beta, most).Range());

    [Fact]
    public void One_probability_is_the_binomial() =>
        Assert.Equal(BinomialTail.AtMost(7, 50, 0.1), new BinomialMixture(50, [0.1]).AtMost(7), 1e-15);

    // Far from the mean the tail is taken as nothing, where it is below 1e-15.
    [Theory]
    [InlineData(1_000, 1e-3)]
    [InlineData(1_000, 0.4)]
    [InlineData(100_000, 1e-6)]
    [InlineData(100_000, 0.97)]
    public void One_probability_is_the_binomial_however_far_from_its_mean(int trials, double p)
    {
        var mixture = new BinomialMixture(trials, [p]);
        for (int k = 0; k <= trials; k += 1 + (k / 200))
        {
            Assert.Equal(BinomialTail.AtMost(k, trials, p), mixture.AtMost(k), 1e-15);
        }
    }

    [Fact]
    public void Certain_events_and_impossible_ones_are_counted_without_spread()
    {
        Assert.Equal((0L, 0L), new BinomialMixture(1_000, [0]).Range());
        Assert.Equal((1_000L, 1_000L), new BinomialMixture(1_000, [1]).Range());
    }

    [Property(MaxTest = 100)]
    public Property Wider_confidence_holds_the_narrower() => Prop.ForAll(
        Gen.Choose(1, 3_000).SelectMany(n => Gen.ArrayOf(Gen.Choose(0, 1_000), 12).Select(p => (n, p))).ToArbitrary(),
        c =>
        {
            var mixture = new BinomialMixture(c.n, [.. c.p.Select(p => p / 1e3)]);
            (long low, long high) = mixture.Range(0.95);
            (long inLow, long inHigh) = mixture.Range(0.5);
            Assert.True(0 <= low && low <= inLow && inLow <= inHigh && inHigh <= high && high <= c.n);
            Assert.True(mixture.AtMost(high) >= 0.975 && (high == 0 || mixture.AtMost(high - 1) < 0.975));
        });

    [Theory]
    [InlineData(1.0, 2.0)]
    [InlineData(-3.0, 1.5)]
    [InlineData(0.0, 40.0)]
    public void False_position_finds_a_zero(double low, double high)
    {
        static double Cubic(double x) => (x * x * x) - 2;
        Assert.Equal(Math.Cbrt(2), FalsePosition.Zero(Cubic, new(low, Cubic(low)), new(high, Cubic(high)), 1e-10, 100), 1e-9);
        Assert.Equal(Math.Cbrt(2), FalsePosition.Zero(x => -Cubic(x), new(high, -Cubic(high)), new(low, -Cubic(low)), 1e-10, 100), 1e-9);
    }

    [Fact]
    public void False_position_asks_for_a_bracket() =>
        Assert.Throws<ArgumentException>(() => FalsePosition.Zero(x => x, new(1, 1), new(2, 2), 1e-6, 10));

    private static double BetaQuantile(double p)
    {
        (double low, double high) = (0.0, 1.0);
        for (int i = 0; i < 60; i++)
        {
            double x = (low + high) / 2;
            (low, high) = BetaTail.Lower(2, 18, x, 1 - x) < p ? (x, high) : (low, x);
        }

        return low;
    }
}
