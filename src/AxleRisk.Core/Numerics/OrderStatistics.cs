namespace AxleRisk.Core.Numerics;

/// <summary>Quantiles of a sample and their distribution-free intervals.</summary>
internal static class OrderStatistics
{
    /// <summary>
    /// The sample quantile by linear interpolation between the order statistics around rank 1 + (n-1) p (type 7 of Hyndman
    /// and Fan 1996).
    /// </summary>
    /// <param name="sorted">The sample in increasing order, at least one value.</param>
    /// <param name="p">The probability, 0 to 1.</param>
    /// <exception cref="ArgumentException">The sample is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not in 0 to 1.</exception>
    public static double Quantile(ReadOnlySpan<double> sorted, double p)
    {
        if (sorted.IsEmpty)
        {
            throw new ArgumentException("a quantile needs at least one value", nameof(sorted));
        }

        if (!(p >= 0 && p <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "a probability lies in 0 to 1");
        }

        double place = (sorted.Length - 1) * p;
        int below = (int)place;
        double fraction = place - below;
        if (fraction == 0 || sorted[below] == sorted[below + 1])
        {
            return sorted[below]; // also keeps infinite values apart from their neighbours
        }

        return sorted[below] * (1 - fraction) + sorted[below + 1] * fraction;
    }

    /// <summary>
    /// The ranks, from 1, of the two order statistics that enclose the p-quantile: the closest with at most (1 - level)/2 of
    /// probability beyond each, by exact binomial tails. Rank 0 or n + 1: the sample is too small for a limit on that side.
    /// </summary>
    /// <param name="n">The sample's size, at least 1.</param>
    /// <param name="p">The probability of the quantile, between 0 and 1.</param>
    /// <param name="confidence">The level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static RankInterval QuantileInterval(long n, double p, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 1);
        if (!(p > 0 && p < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "the probability of a quantile lies between 0 and 1");
        }

        double tail = Confidence.Tail(confidence);

        // The count below the quantile is binomial; its normal approximation with the first skewness correction of Cornish
        // and Fisher is a rank or two off, and the exact tails decide.
        double z = -StandardNormal.Quantile(tail);
        double half = z * Math.Sqrt(n * p * (1 - p));
        double centre = n * p + (z * z - 1) * (1 - 2 * p) / 6;
        long lower = Math.Clamp((long)Math.Round(centre - half), 0, n);
        long upper = Math.Clamp((long)Math.Round(centre + half), 1, n + 1);
        while (lower > 0 && BinomialTail.AtMost(lower - 1, n, p) > tail)
        {
            lower--;
        }

        while (lower < n && BinomialTail.AtMost(lower, n, p) <= tail)
        {
            lower++;
        }

        while (upper <= n && BinomialTail.AtLeast(upper, n, p) > tail)
        {
            upper++;
        }

        while (upper > 1 && BinomialTail.AtLeast(upper - 1, n, p) <= tail)
        {
            upper--;
        }

        return new(lower, upper, 1 - BinomialTail.AtMost(lower - 1, n, p) - BinomialTail.AtLeast(upper, n, p));
    }
}
