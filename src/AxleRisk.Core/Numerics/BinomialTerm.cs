namespace AxleRisk.Core.Numerics;

/// <summary>
/// The binomial probability for real arguments without the cancellation of large logarithms of factorials, after Loader
/// (2000, Fast and accurate computation of binomial probabilities): relative error near 1e-14 for counts from 16 to 1e9; where one of
/// the counts is below 16, whose factorials go by the gamma function, up to 1.5e-13.
/// </summary>
internal static class BinomialTerm
{
    private const double HalfLog2Pi = 0.91893853320467274178;

    /// <summary>n! / (x! (n-x)!) p^x q^(n-x) with q = 1 - p and gamma functions for factorials; 0 &lt;= x &lt;= n.</summary>
    public static double Density(double x, double n, double p, double q)
    {
        if (p == 0 || q == 0)
        {
            return (p == 0 ? x == 0 : x == n) ? 1 : 0;
        }

        if (x == 0)
        {
            return Math.Exp(n * LogOf(q, p));
        }

        if (x == n)
        {
            return Math.Exp(n * LogOf(p, q));
        }

        double log = StirlingError(n) - StirlingError(x) - StirlingError(n - x) - Deviance(x, n * p) - Deviance(n - x, n * q);
        return Math.Exp(log - HalfLog2Pi) * Math.Sqrt(n / (x * (n - x)));
    }

    // ln(p) given q = 1 - p with all its digits: near p = 1 the rounding error of p cancels in the quotient (Kahan).
    private static double LogOf(double p, double q) => p == 1 ? -q : Math.Log(p) * (q / (1 - p));

    // ln n! - [ (n + 1/2) ln n - n + ln(2 pi)/2 ]
    private static double StirlingError(double n)
    {
        if (n < 16)
        {
            return MathNet.Numerics.SpecialFunctions.GammaLn(n + 1) - (n + 0.5) * Math.Log(n) + n - HalfLog2Pi;
        }

        double s = 1 / (n * n);
        return (1.0 / 12 - (1.0 / 360 - (1.0 / 1260 - (1.0 / 1680 - (1.0 / 1188 - 691.0 / 360360 * s) * s) * s) * s) * s) / n;
    }

    // x ln(x/m) + m - x, by its series in v = (x-m)/(x+m) where the terms would cancel
    private static double Deviance(double x, double m)
    {
        double v = (x - m) / (x + m);
        if (Math.Abs(v) >= 0.1)
        {
            return x * Math.Log(x / m) + m - x;
        }

        double sum = (x - m) * v, term = 2 * x * v;
        for (int j = 1; ; j++)
        {
            term *= v * v;
            double next = sum + term / (2 * j + 1);
            if (next == sum)
            {
                return next;
            }

            sum = next;
        }
    }
}
