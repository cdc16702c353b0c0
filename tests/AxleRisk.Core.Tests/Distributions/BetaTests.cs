using AxleRisk.Core.Distributions;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

public class BetaTests
{
    /// <summary>
    /// Reference values: the incomplete beta function with 40 digits (Python mpmath 1.3), inverted by bisection; 16 digits.
    /// </summary>
    [Theory]
    [InlineData(0.5, 0.5, 1e-12, 2.46740110027234e-24)]
    [InlineData(0.5, 0.5, 0.95, 0.9938441702975689)]
    [InlineData(1.8, 4.2, 1e-12, 6.268514882381162e-8)]
    [InlineData(1.8, 4.2, 0.05, 0.05897738761181725)]
    [InlineData(1.8, 4.2, 0.95, 0.6212767240161902)]
    [InlineData(0.05, 3.0, 1e-12, 2.300047000664899e-241)]
    [InlineData(0.05, 3.0, 0.05, 2.193495751061286e-27)]
    [InlineData(0.05, 3.0, 0.95, 0.09921222864313498)]
    [InlineData(300.0, 2.0, 1e-12, 0.9016801860506938)]
    [InlineData(300.0, 2.0, 0.5, 0.9944303748073786)]
    [InlineData(300.0, 2.0, 0.95, 0.9988181297052748)]
    public void The_quantile_equals_the_reference(double alpha, double beta, double p, double expected)
    {
        Assert.Equal(1, new ScaledBeta(alpha, beta).Quantile(p) / expected, 1e-12);

        Assert.Equal(1 - expected, new ScaledBeta(beta, alpha).UpperQuantile(p), 1e-12);
    }

    [Property(MaxTest = 1000)]
    public bool The_quantile_inverts_the_cumulative_for_any_shapes(ushort first, ushort second, uint probabilityIndex)
    {
        double alpha = 0.05 * Math.Pow(10, 5.0 * first / ushort.MaxValue);
        double beta = 0.05 * Math.Pow(10, 5.0 * second / ushort.MaxValue);
        double p = (probabilityIndex + 0.5) / 4294967296.0;
        var distribution = new ScaledBeta(alpha, beta);
        double x = distribution.Quantile(p);

        // Near 1 the rounding of x itself moves the probability.
        return x is 0 or 1 || Math.Abs(distribution.Cumulative(x) - p) < (1e-9 * p) + (2e-16 * distribution.Density(x));
    }
}
