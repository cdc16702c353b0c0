namespace AxleRisk.Core.Numerics;

/// <summary>Exact tails of the binomial distribution, by the incomplete beta function.</summary>
internal static class BinomialTail
{
    /// <summary>P(X &lt;= k), X the number of successes in n trials of probability p.</summary>
    public static double AtMost(long k, long n, double p) =>
        k < 0 ? 0 : k >= n ? 1 : BetaTail.Upper(k + 1.0, n - k, p, 1 - p);

    /// <summary>P(X &gt;= k).</summary>
    public static double AtLeast(long k, long n, double p) =>
        k <= 0 ? 1 : k > n ? 0 : BetaTail.Lower(k, n - k + 1.0, p, 1 - p);
}
