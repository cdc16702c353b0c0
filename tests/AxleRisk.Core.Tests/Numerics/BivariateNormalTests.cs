using AxleRisk.Core.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class BivariateNormalTests
{
    // Two-component systems, recomputed by Plackett's integral and scipy; 1e-8 relative.
    [Theory]
    [InlineData(3, 3, .5, 8.1889661832e-5, 2.6179064014e-3)]
    [InlineData(3, 3, .8, 3.7209239627e-4, 2.3277036670e-3)]
    [InlineData(3, 3.5, .6, 4.1446589421e-5, 1.5410805212e-3)]
    [InlineData(2.5, 3, -.4, 2.3598587066e-8, 7.5595397588e-3)]
    [InlineData(3, 3, 0, 1.8222246958e-6, 2.6979738386e-3)]
    public void Parallel_and_series_systems_equal_the_reference(double b1, double b2, double rho, double parallel, double series)
    {
        double both = BivariateNormal.Cumulative(-b1, -b2, rho);
        Assert.Equal(parallel, both, 1e-8 * parallel);
        Assert.Equal(series, 1 - BivariateNormal.Cumulative(b1, b2, rho), 1e-8 * series);
    }

    // Indices of the failure of a linear limit state, g = beta - sum alpha_i U_i, by Phi2; derived, 1e-8 (printed to 1e-10).
    [Theory]
    [InlineData(2, .8, .2550174102, .9089650293)]
    [InlineData(2, .6, .0910349707, .7449825898)]
    [InlineData(3, .8, .1255424999, .9749892856)]
    [InlineData(3, .5, .0110477467, .7841756635)]
    [InlineData(3, .3316624790, .0026334430, .5714773735)]
    public void Failure_indicator_indices_equal_the_derived_values(double beta, double alpha, double first, double total)
    {
        double pf = StandardNormal.Cumulative(-beta);
        double Share(double rho) => (BivariateNormal.Cumulative(-beta, -beta, rho) - pf * pf) / (pf * (1 - pf));
        Assert.Equal(first, Share(alpha * alpha), 1e-8);
        Assert.Equal(total, 1 - Share(1 - alpha * alpha), 1e-8);
    }

    [Theory]
    [InlineData(double.NaN, 0)]
    [InlineData(0, double.NaN)]
    public void No_limit_has_no_probability(double h, double k) => Assert.True(double.IsNaN(BivariateNormal.Cumulative(h, k, 0.5)));

    // Phi2(0, 0; rho) = 1/4 + asin(rho)/(2 pi), closed form.
    [Theory]
    [InlineData(-1)]
    [InlineData(-.99)]
    [InlineData(-.5)]
    [InlineData(0)]
    [InlineData(.9)]
    [InlineData(.93)]
    [InlineData(.999999)]
    [InlineData(1)]
    public void At_the_origin_the_closed_form_holds(double rho) =>
        Assert.Equal(0.25 + Math.Asin(rho) / (2 * Math.PI), BivariateNormal.Cumulative(0, 0, rho), 1e-14);

    // The slow twin: P(X <= h, Y <= k) = int phi(x) Phi((k - rho x)/sqrt(1 - rho^2)) dx over (-inf, h], by Gauss-Legendre
    // panels 1/16 wide, narrow enough for |rho| <= 0.995.
    [Theory]
    [InlineData(-.995)]
    [InlineData(-.93)]
    [InlineData(-.6)]
    [InlineData(.3)]
    [InlineData(.92)]
    [InlineData(.926)]
    [InlineData(.995)]
    public void The_method_agrees_with_plain_quadrature(double rho)
    {
        foreach (double h in (double[])[-4, -1.3, 0, 0.4, 2.5])
        {
            foreach (double k in (double[])[-3.1, -0.7, 0, 0.41, 2, 5])
            {
                double s = Math.Sqrt((1 - rho) * (1 + rho));
                double expected = 0;
                for (double x = h; x > -9; x -= 1 / 16.0)
                {
                    expected += MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
                        t => StandardNormal.Density(t) * StandardNormal.Cumulative((k - rho * t) / s), x - 1 / 16.0, x, 20);
                }

                Assert.Equal(expected, BivariateNormal.Cumulative(h, k, rho), 2e-14);
            }
        }
    }

    [Property(MaxTest = 300)]
    public void It_is_symmetric_and_complements_itself(short h, short k, sbyte rho)
    {
        double x = h / 8000.0, y = k / 8000.0, r = rho / 128.0;
        double p = BivariateNormal.Cumulative(x, y, r);
        Assert.Equal(BivariateNormal.Cumulative(y, x, r), p, 1e-14);
        Assert.Equal(StandardNormal.Cumulative(x) - BivariateNormal.Cumulative(x, -y, -r), p, 1e-14);
    }

    [Fact]
    public void Infinite_limits_leave_the_other_margin()
    {
        Assert.Equal(StandardNormal.Cumulative(-1.5), BivariateNormal.Cumulative(double.PositiveInfinity, -1.5, 0.7), 1e-15);
        Assert.Equal(StandardNormal.Cumulative(-1.5), BivariateNormal.Cumulative(-1.5, double.PositiveInfinity, -0.97), 1e-15);
        Assert.Equal(0, BivariateNormal.Cumulative(double.NegativeInfinity, 1, 0.5));
        Assert.Equal(double.NaN, BivariateNormal.Cumulative(double.NaN, 1, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => BivariateNormal.Cumulative(0, 0, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => BivariateNormal.Cumulative(0, 0, 1.01));
    }
}
