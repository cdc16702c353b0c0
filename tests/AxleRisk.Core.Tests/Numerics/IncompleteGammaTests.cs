using AxleRisk.Core.Numerics;
using MathNet.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

/// <summary>
/// Against finite sums and recurrences (DLMF 8.4 and 8.8): 1e-12 relative, in both tails, on both sides of the change of method.
/// </summary>
public sealed class IncompleteGammaTests
{
    private static readonly double[] Ratios = [0.01, 0.2, 0.6, 0.9, 0.99, 1, 1.01, 1.1, 1.5, 3];

    // DLMF 8.4.10: Q(n, x) = e^-x sum_{k<n} x^k / k!, and P the rest of the same series; all terms are positive.
    [Fact]
    public void Whole_shapes_have_the_sums_of_Poisson()
    {
        for (int n = 1; n <= 60; n++)
        {
            foreach (double x in Ratios.Select(r => r * n).Append(n + 1).Append(Math.BitDecrement(n + 1.0)))
            {
                double term = Math.Exp(-x), upper = 0, lower = 0;
                for (int k = 0; k < n + 400; k++, term *= x / k)
                {
                    upper += k < n ? term : 0;
                    lower += k < n ? 0 : term;
                }

                Tails tails = IncompleteGamma.At(n, Math.Log(x));
                Assert.Equal(1, tails.Lower / lower, 1e-12);
                Assert.Equal(1, tails.Upper / upper, 1e-12);
            }
        }
    }

    // DLMF 8.8.5, 8.8.6: P(a + 1, x) = P(a, x) - x^a e^-x / Gamma(a + 1), Q(a + 1, x) = Q(a, x) + the same.
    [Fact]
    public void Neighbouring_shapes_keep_the_recurrence()
    {
        for (double a = 0.07; a < 60; a *= 1.13)
        {
            foreach (double x in Ratios.Select(r => r * a))
            {
                double step = Math.Exp((a * Math.Log(x)) - x - SpecialFunctions.GammaLn(a + 1));
                Tails here = IncompleteGamma.At(a, Math.Log(x)), next = IncompleteGamma.At(a + 1, Math.Log(x));

                // The logarithms of the step are up to 200, its error so 200 ulps.
                Assert.Equal(here.Upper + step, next.Upper, 1e-13);
                Assert.Equal(here.Lower, next.Lower + step, 1e-13);
                Assert.Equal(1, (here.Upper + step) / next.Upper, 2e-12);
                Assert.Equal(1, here.Lower / (next.Lower + step), 2e-12);
            }
        }
    }

    // DLMF 8.4.6: Q(1/2, x) = erfc(sqrt x) = 2 (1 - Phi(sqrt(2 x))).
    [Theory]
    [InlineData(1e-8)]
    [InlineData(0.3)]
    [InlineData(1.4999)]
    [InlineData(1.5001)]
    [InlineData(40)]
    [InlineData(600)]
    public void A_half_is_the_normal_distribution(double x)
    {
        Tails tails = IncompleteGamma.At(0.5, Math.Log(x));
        Assert.Equal(1, tails.Upper / (2 * StandardNormal.Upper(Math.Sqrt(2 * x))), 1e-12);
        Assert.Equal(1 - tails.Upper, tails.Lower, 1e-15);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(9.999)]
    [InlineData(10)]
    [InlineData(12.5)]
    [InlineData(40)]
    [InlineData(1000)]
    public void The_slope_is_the_density_over_the_logarithm(double a)
    {
        // x^a e^-x / Gamma(a) in logarithms: their size times 1e-16 is what they lose.
        foreach (double x in Ratios.Select(r => r * a).Append(1.29 * a).Append(0.71 * a))
        {
            double ln = (a * Math.Log(x)) - x - SpecialFunctions.GammaLn(a);
            if (ln > -700)
            {
                Assert.Equal(1, IncompleteGamma.Slope(a, x, Math.Log(x)) / Math.Exp(ln), 4e-16 * a * (Math.Log(a + 1) + 8) + 1e-14);
            }
        }

        Assert.Equal(0, IncompleteGamma.Slope(a, double.PositiveInfinity, double.PositiveInfinity));
    }

    [Fact]
    public void Beyond_all_doubles_one_tail_is_all()
    {
        Assert.Equal(new Tails(0, 1, 0), IncompleteGamma.At(3, -1000));
        Assert.Equal(new Tails(1, 0, 0), IncompleteGamma.At(3, 8));
        // P = x^a / Gamma(a + 1) near 0.
        Assert.Equal(1, Math.Exp(IncompleteGamma.LogQuantile(0.01, 1e-4, 1 - 1e-4) * 0.01) / (1e-4 * SpecialFunctions.Gamma(1.01)), 1e-12);
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.3)]
    [InlineData(0.999)]
    [InlineData(1)]
    [InlineData(1.3)]
    [InlineData(7)]
    [InlineData(300)]
    public void The_quantile_leaves_the_tail_asked_for(double a)
    {
        foreach (double p in (double[])[1e-250, 1e-40, 1e-9, 0.02, 0.3, 0.5])
        {
            Assert.Equal(1, IncompleteGamma.At(a, IncompleteGamma.LogQuantile(a, p, 1 - p)).Lower / p, 1e-11 + (1e-13 * Math.Log(1 / p)));
            Assert.Equal(1, IncompleteGamma.At(a, IncompleteGamma.LogQuantile(a, 1 - p, p)).Upper / p, 1e-11 + (1e-13 * Math.Log(1 / p)));
        }
    }
}
