namespace AxleRisk.Core.Numerics;

/// <summary>Student's t distribution; relative error about 1e-16 times the degrees of freedom, at least 1e-14.</summary>
internal static class StudentT
{
    /// <summary>P(T &gt; t) for t at least 0: half of I_x(df/2, 1/2), x = df / (df + t^2).</summary>
    public static double Upper(double t, double degreesOfFreedom)
    {
        double sum = degreesOfFreedom + t * t;
        return 0.5 * BetaTail.Lower(degreesOfFreedom / 2, 0.5, degreesOfFreedom / sum, t * t / sum);
    }

    /// <summary>The quantile of p in (0, 1), by Newton's method on the logarithm of the tail.</summary>
    /// <remarks>MathNet's InvCDF does not converge in the tails (df 3, p 1e-9).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">p is not in (0, 1) or the degrees of freedom are not above 0.</exception>
    public static double Quantile(double p, double degreesOfFreedom)
    {
        if (!(p > 0 && p < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "a probability lies between 0 and 1");
        }

        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "degrees of freedom are above 0");
        }

        double tail = Math.Min(p, 1 - p);
        if (tail == 0.5)
        {
            return 0;
        }

        double high = 1;
        while (Upper(high, degreesOfFreedom) > tail)
        {
            high *= 2;
        }

        double t = RootFinder.Increasing(
            t =>
            {
                double upper = Upper(t, degreesOfFreedom);
                return (Math.Log(tail / upper), Density(t, degreesOfFreedom) / upper);
            },
            0, high, -StandardNormal.Quantile(tail));
        return p < 0.5 ? -t : t;
    }

    private static double Density(double t, double degreesOfFreedom) =>
        MathNet.Numerics.Distributions.StudentT.PDF(0, 1, degreesOfFreedom, t);
}
