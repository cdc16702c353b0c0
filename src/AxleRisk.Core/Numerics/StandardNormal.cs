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

    /// <summary><see cref="Cumulative(double)"/> of every element of <paramref name="z"/>.</summary>
    /// <param name="z">The arguments.</param>
    /// <param name="p">Takes the probabilities; as long as <paramref name="z"/>, and may be the same memory.</param>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    public static void Cumulative(ReadOnlySpan<double> z, Span<double> p)
    {
        SameLength(z, p);
        for (int i = 0; i < p.Length; i++)
        {
            p[i] = Cumulative(z[i]);
        }
    }

    /// <summary>
    /// The quantile of every element of <paramref name="p"/>; agrees with <see cref="Quantile(double)"/> to a few last bits. A
    /// value does not depend on its place in the batch.
    /// </summary>
    /// <param name="p">The probabilities, 0 to 1; outside, the quantile is NaN.</param>
    /// <param name="z">Takes the quantiles; as long as <paramref name="p"/>, and may be the same memory.</param>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    public static void Quantiles(ReadOnlySpan<double> p, Span<double> z)
    {
        SameLength(p, z);
        NormalQuantileBatch.Fill(p, z);
    }

    private static void SameLength(ReadOnlySpan<double> from, Span<double> to)
    {
        if (from.Length != to.Length)
        {
            throw new ArgumentException("the result must be as long as the argument", nameof(to));
        }
    }
}
