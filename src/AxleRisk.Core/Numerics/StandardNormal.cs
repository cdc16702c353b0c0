using MathNet.Numerics;

namespace AxleRisk.Core.Numerics;

/// <summary>The standard normal distribution, accurate in both tails.</summary>
public static class StandardNormal
{
    private const double InverseSqrt2Pi = 0.3989422804014326779399460599343819;

    /// <summary>The density.</summary>
    public static double Density(double z) => InverseSqrt2Pi * Math.Exp(-0.5 * z * z);

    /// <summary>P(Z &lt;= z); full relative accuracy in the lower tail.</summary>
    public static double Cumulative(double z) => 0.5 * SpecialFunctions.Erfc(-z / Constants.Sqrt2);

    /// <summary>P(Z &gt; z); full relative accuracy in the upper tail.</summary>
    public static double Upper(double z) => Cumulative(-z);

    /// <summary>The quantile of <paramref name="p"/> in [0, 1]; infinite at the ends.</summary>
    public static double Quantile(double p) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, p);
}
