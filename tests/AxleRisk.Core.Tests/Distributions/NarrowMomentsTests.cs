using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>
/// Moments where a plain formula in doubles would cancel, against the same formula with 28 digits (decimal), and closed ones.
/// </summary>
public sealed class NarrowMomentsTests
{
    // Mean (h - l) / L and mean square (h^2 - l^2) / (2 L), L = ln(h / l). Relative error of the series below 0.05: the first term left
    // out is 12 L^6 / (6720 * 56), 5e-13; of the closed form above it the cancellation of cosh, 1e-16 * 24 / L^4, 4e-10.
    [Theory]
    [InlineData(1e-4)]
    [InlineData(0.01)]
    [InlineData(0.03)]
    [InlineData(0.0499)]
    [InlineData(0.0501)]
    [InlineData(0.06)]
    [InlineData(0.3)]
    [InlineData(2)]
    public void A_log_uniform_has_its_moments_however_narrow(double logRatio)
    {
        double high = Math.Exp(logRatio) * 3;
        decimal l = 3, h = (decimal)high, log = LnOnePlus((h - l) / l);
        decimal mean = (h - l) / log, variance = (((h * h) - (l * l)) / (2 * log)) - (mean * mean);
        var distribution = new LogUniform(3, (double)h);
        Assert.Equal(1, distribution.Mean / (double)mean, 1e-14);
        Assert.Equal(1, distribution.StandardDeviation / Math.Sqrt((double)variance), logRatio < 0.05 ? 1e-12 : 1e-9);
    }

    // Gamma(1 + 1/k) from whole and half arguments: k = 1, 2, 1/2, 1/3.
    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(2, 0.886226925452758, 0.463251375176110)] // sqrt(pi) / 2, sqrt(1 - pi / 4)
    [InlineData(0.5, 2, 4.47213595499958)] // 2!, sqrt(4! - 2!^2)
    [InlineData(1 / 3.0, 6, 26.1533936612440)] // 3!, sqrt(6! - 3!^2)
    public void A_Weibull_has_the_moments_of_its_gamma_functions(double shape, double mean, double deviation)
    {
        var weibull = new Weibull(shape, 10, -3);
        Assert.Equal((10 * mean) - 3, weibull.Mean, 1e-11 * mean);
        Assert.Equal(10 * deviation, weibull.StandardDeviation, 1e-12 * 10 * deviation);
    }

    // Of a large shape k the Weibull is a Gumbel of minima of scale s / k: sd = pi s / (sqrt 6 k) (1 + O(1 / k)).
    [Fact]
    public void A_steep_Weibull_keeps_the_digits_of_its_spread() =>
        Assert.Equal(1, new Weibull(1e4, 1).StandardDeviation * 1e4 * Math.Sqrt(6) / Math.PI, 5e-4);

    [Fact]
    public void Straight_families_have_their_textbook_moments()
    {
        Assert.Equal((2.0, Math.Sqrt(1 / 12.0) * 6), (new Uniform(-1, 5).Mean, new Uniform(-1, 5).StandardDeviation), Near);
        Assert.Equal((14.0, Math.Sqrt(14 / 3.0)), (new Triangular(10, 12, 20).Mean, new Triangular(10, 12, 20).StandardDeviation), Near);
        Assert.Equal((1 / 3.0, Math.Sqrt(1 / 18.0)), (new Triangular(0, 0, 1).Mean, new Triangular(0, 0, 1).StandardDeviation), Near);
        Assert.Equal((12.0, Math.Sqrt(48)), (new Gamma(3, 4).Mean, new Gamma(3, 4).StandardDeviation), Near);
        Assert.Equal((0.4, 0.2), (new ScaledBeta(2, 3).Mean, new ScaledBeta(2, 3).StandardDeviation), Near);
        Assert.Equal((5.0, 2.0), (new ScaledBeta(2, 3, 1, 11).Mean, new ScaledBeta(2, 3, 1, 11).StandardDeviation), Near);
        Assert.Equal((2 * Math.Exp(0.02), 2 * Math.Exp(0.02) * Math.Sqrt(Math.Exp(0.04) - 1)),
            (new Lognormal(2, 0.2).Mean, new Lognormal(2, 0.2).StandardDeviation), Near);

        // States 1, 2, 5 with weights 1, 2, 1: mean 2.5, variance (2.25 + 2 * 0.25 + 6.25) / 4.
        Assert.Equal((2.5, 1.5), (new NumberChoice([5, 1, 2], [1, 1, 2]).Mean, new NumberChoice([5, 1, 2], [1, 1, 2]).StandardDeviation),
            Near);

        // Scaling scales both.
        Distribution scaled = Scaled.Of(new Triangular(10, 12, 20), 0.5);
        Assert.Equal((7.0, Math.Sqrt(14 / 12.0)), (scaled.Mean, scaled.StandardDeviation), Near);
        Assert.Equal(new Triangular(10, 12, 20).Density(13) * 2, scaled.Density(6.5), 1e-15);
    }

    private static bool Near((double, double) a, (double, double) b) =>
        Math.Abs(a.Item1 - b.Item1) < 1e-13 && Math.Abs(a.Item2 - b.Item2) < 1e-13;

    // 2 atanh(x / (2 + x)), to all digits of decimal.
    private static decimal LnOnePlus(decimal x)
    {
        decimal s = x / (2 + x), power = s, sum = 0;
        for (int k = 1; power > 1e-28m; k += 2, power *= s * s)
        {
            sum += power / k;
        }

        return 2 * sum;
    }
}
