namespace AxleRisk.Core.Numerics;

/// <summary>Two-sided confidence intervals of a probability from x successes in n independent trials.</summary>
internal static class BinomialInterval
{
    /// <summary>The score interval of Wilson (1927), without continuity correction: mean coverage near the level.</summary>
    /// <param name="x">The successes, 0 to n.</param>
    /// <param name="n">The trials, at least 1.</param>
    /// <param name="confidence">The level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Interval Wilson(long x, long n, double confidence = 0.95)
    {
        double tail = Check(x, n, confidence);
        double z = -StandardNormal.Quantile(tail), z2 = z * z;
        double estimate = (double)x / n;
        double centre = x + z2 / 2;
        double half = z * Math.Sqrt((double)x * (n - x) / n + z2 / 4);

        // Of the product of the roots, x^2 / (n (n + z^2)): no cancellation where few or nearly all trials succeed.
        double low = (double)x * x / n / (centre + half);
        double high = 1 - (double)(n - x) * (n - x) / n / (n - x + z2 / 2 + half);
        return x <= n / 2 ? new(estimate, low, (centre + half) / (n + z2)) : new(estimate, (centre - half) / (n + z2), high);
    }

    /// <summary>The exact interval of Clopper and Pearson (1934): coverage never below the level.</summary>
    /// <inheritdoc cref="Wilson"/>
    public static Interval ClopperPearson(long x, long n, double confidence = 0.95)
    {
        double tail = Check(x, n, confidence);
        return new((double)x / n, x == 0 ? 0 : Lower(x, n, tail), x == n ? 1 : Upper(x, n, tail));
    }

    // P(X >= x | p) = tail
    private static double Lower(long x, long n, double tail)
    {
        if (x == n)
            return Math.Exp(Math.Log(tail) / n);
        return RootFinder.Increasing(
            p =>
            {
                double atLeast = BinomialTail.AtLeast(x, n, p);
                return (Math.Log(atLeast / tail), n * BinomialTerm.Density(x - 1, n - 1, p, 1 - p) / atLeast);
            },
            0, (double)x / n, Wilson(x, n, 1 - 2 * tail).Low);
    }

    // P(X <= x | p) = tail
    private static double Upper(long x, long n, double tail)
    {
        if (x == 0)
            return -Expm1(Math.Log(tail) / n);
        return RootFinder.Increasing(
            p =>
            {
                double atMost = BinomialTail.AtMost(x, n, p);
                return (Math.Log(tail / atMost), n * BinomialTerm.Density(x, n - 1, p, 1 - p) / atMost);
            },
            (double)x / n, 1, Wilson(x, n, 1 - 2 * tail).High);
    }

    private static double Expm1(double x) => MathNet.Numerics.SpecialFunctions.Expm1(x);

    private static double Check(long x, long n, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(x);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(x, n);
        return Confidence.Tail(confidence);
    }
}
