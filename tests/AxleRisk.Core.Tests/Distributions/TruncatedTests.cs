using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

public class TruncatedTests
{
    [Fact]
    public void A_half_normal_has_its_closed_form()
    {
        // |Z|: mean sqrt(2/pi), variance 1 - 2/pi, median the normal quantile of 0.75.
        var half = new Truncated(new Normal(0, 1), 0, null);
        Assert.Equal(Math.Sqrt(2 / Math.PI), half.Mean, 1e-10);
        Assert.Equal(Math.Sqrt(1 - (2 / Math.PI)), half.StandardDeviation, 1e-10);
        Assert.Equal(0.6744897501960817, half.Median, 1e-14);
    }

    [Fact]
    public void An_exponential_cut_below_is_one_moved_up()
    {
        // Lack of memory; kept probability e^-25 = 1.4e-11.
        var cut = new Truncated(new Exponential(1), 25, null);
        foreach (double p in new[] { 1e-3, 0.5, 0.999, 1 - 1e-9 })
        {
            Assert.Equal(new Exponential(26, 25).Quantile(p), cut.Quantile(p), 1e-12);
        }

        Assert.Equal(26, cut.Mean, 1e-9);
    }

    [Fact]
    public void Limits_outside_the_support_cut_nothing()
    {
        var inner = new Uniform(0, 1);
        var cut = new Truncated(inner, -5, 5);
        Assert.Equal((0, 1), (cut.Minimum, cut.Maximum));
        Assert.Equal(inner.Quantile(0.3), cut.Quantile(0.3));
    }

    [Fact]
    public void A_piece_of_1e_12_is_kept_and_less_is_not()
    {
        var exponential = new Exponential(1);
        Assert.InRange(new Truncated(exponential, 27.6, null).Median, 28.29, 28.30); // e^-27.6 = 1.03e-12; 27.6 + ln 2
        Assert.Contains("almost no probability",
            Assert.Throws<DistributionException>(() => new Truncated(exponential, 27.7, null)).Message);
    }

    [Fact]
    public void A_cut_sample_keeps_the_atom_on_its_limit()
    {
        // Quantile of 1 1 2 2 2 5: atoms 0.2 at 1 and 0.4 at 2, 0.2 spread over (1, 2), 0.2 over (2, 5).
        var cut = new Truncated(new Empirical([1, 1, 2, 2, 2, 5]), 2, null);
        Assert.Equal(2 / 3.0, cut.Cumulative(2), 1e-14);
        Assert.Equal(2, cut.Quantile(0.6));
    }

    [Fact]
    public void A_choice_and_a_cut_distribution_are_not_cut()
    {
        Assert.Throws<DistributionException>(() => new Truncated(new NumberChoice([1, 2], [1, 1]), 1.5, null));
        Assert.Throws<DistributionException>(() => new Truncated(new Truncated(new Normal(0, 1), -1, 1), 0, null));
    }
}
