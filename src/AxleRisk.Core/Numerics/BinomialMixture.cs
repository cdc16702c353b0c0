namespace AxleRisk.Core.Numerics;

/// <summary>
/// A count that is binomial given its probability of success, where the probability is one of many that are equally likely:
/// the predictive distribution of a two-level sample (a compound binomial).
/// </summary>
internal sealed class BinomialMixture
{
    /// <summary>Beyond so many standard deviations, with the skewness of rare counts allowed for, a tail is below 1e-15.</summary>
    private const double Far = 12;

    private readonly long trials;
    private readonly double[] probabilities;

    /// <summary>Creates a mixture.</summary>
    /// <param name="trials">The number of trials, at least 1.</param>
    /// <param name="probabilities">The probabilities, at least one, each from 0 to 1.</param>
    /// <param name="most">Where there are more, neighbours in size are replaced by their mean, so that this many or fewer are left.</param>
    public BinomialMixture(long trials, ReadOnlySpan<double> probabilities, int most = int.MaxValue)
    {
        this.trials = trials;
        double[] sorted = probabilities.ToArray();
        Array.Sort(sorted);
        int together = 1 + ((sorted.Length - 1) / most);
        this.probabilities = sorted.Length % together == 0
            ? [.. sorted.Chunk(together).Select(c => CompensatedSum.Of(c) / c.Length)] : sorted;
    }

    /// <summary>P(count &lt;= k).</summary>
    public double AtMost(long k)
    {
        CompensatedSum sum = default;
        foreach (double p in probabilities)
        {
            sum.Add(AtMost(k, p));
        }

        return sum.Value / probabilities.Length;
    }

    /// <summary>The least count k with P(count &lt;= k) &gt;= <paramref name="p"/>.</summary>
    public long Quantile(double p)
    {
        long low = -1;
        long high = trials;
        while (high - low > 1)
        {
            long middle = low + ((high - low) / 2);
            (low, high) = AtMost(middle) >= p ? (low, middle) : (middle, high);
        }

        return high;
    }

    /// <summary>The two-sided predictive interval: the quantiles with half of the rest beyond each.</summary>
    public (long Low, long High) Range(double confidence = 0.95)
    {
        double tail = Confidence.Tail(confidence);
        return (Quantile(tail), Quantile(1 - tail));
    }

    private double AtMost(long k, double p)
    {
        double reach = (Far * Math.Sqrt(trials * p * (1 - p))) + (Far * Far);
        double off = k - (trials * p);
        return off > reach ? 1 : off < -reach ? 0 : BinomialTail.AtMost(k, trials, p);
    }
}
