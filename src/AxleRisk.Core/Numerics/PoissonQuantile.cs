namespace AxleRisk.Core.Numerics;

/// <summary>Quantiles of the Poisson distribution, to draw counts by.</summary>
internal static class PoissonQuantile
{
    /// <summary>Above this mean the quantile is that of the normal with the correction for skewness (Cornish and Fisher 1938).</summary>
    private const double Large = 300;

    /// <summary>The least count that at least <paramref name="p"/> of the probability lies at or below.</summary>
    /// <param name="mean">The mean, 0 or above.</param>
    /// <param name="p">The probability, between 0 and 1.</param>
    public static double Of(double mean, double p)
    {
        if (!(mean > 0))
        {
            return 0;
        }

        if (mean > Large)
        {
            double z = StandardNormal.Quantile(p);
            return Math.Max(0, Math.Floor(mean + (Math.Sqrt(mean) * z) + (((z * z) - 1) / 6) + 0.5));
        }

        double term = Math.Exp(-mean), sum = term;
        int count = 0;
        while (sum < p && count < 10 * Large)
        {
            term *= mean / ++count;
            sum += term;
        }

        return count;
    }
}
