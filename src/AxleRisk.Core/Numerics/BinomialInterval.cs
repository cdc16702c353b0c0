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
        if (x > n - x)
        {
            return OfTheOthers(x, n, Wilson(n - x, n, confidence));
        }

        double z = -StandardNormal.Quantile(tail), z2 = z * z;
        double sum = x + z2 / 2 + z * Math.Sqrt((double)x * (n - x) / n + z2 / 4);

        // The lower end from the product of the two, x^2 / (n (n + z^2)): no cancellation where few trials succeed.
        return new((double)x / n, (double)x * x / n / sum, sum / (n + z2));
    }

    // The limits of p from those of 1 - p, whose doubles are finer where p is near 1.
    private static Interval OfTheOthers(long x, long n, Interval failures) =>
        new((double)x / n, 1 - failures.High, 1 - failures.Low);

    private static double Check(long x, long n, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(x);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(x, n);
        return Confidence.Tail(confidence);
    }
}
