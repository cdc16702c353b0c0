using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using MathNet.Numerics.Integration;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>Numerical integrals for the tests, by composite Gauss-Legendre rules: another method than the library's own.</summary>
internal static class Integration
{
    public static double Composite(Func<double, double> f, double low, double high, int panels)
    {
        double width = (high - low) / panels;
        return Enumerable.Range(0, panels).Sum(i => GaussLegendreRule.Integrate(f, low + (i * width), low + ((i + 1) * width), 12));
    }

    /// <summary>The mean of a function of X, integrated over the standard normal score of the probability.</summary>
    public static double Expectation(Distribution distribution, Func<double, double> f) => Composite(
        z => StandardNormal.Density(z) * f(z < 0
            ? distribution.Quantile(StandardNormal.Cumulative(z))
            : distribution.UpperQuantile(StandardNormal.Upper(z))),
        -14,
        14,
        400);

    /// <summary>
    /// The probability between two points from the density, over the logarithm of the distance to the nearer end of the support
    /// where that is finite.
    /// </summary>
    public static double OfDensity(Distribution distribution, double low, double high)
    {
        (double start, double end) = (distribution.Minimum, distribution.Maximum);
        if (!double.IsFinite(start))
        {
            return Composite(distribution.Density, low, high, 100);
        }

        double middle = double.IsFinite(end) ? Math.Clamp((start + end) / 2, low, high) : high;
        return OverLog(e => distribution.Density(start + e), low - start, middle - start)
            + OverLog(e => distribution.Density(end - e), end - high, end - middle);
    }

    private static double OverLog(Func<double, double> f, double low, double high) =>
        low < high ? Composite(u => Math.Exp(u) * f(Math.Exp(u)), Math.Log(low), Math.Log(high), 100) : 0;
}
