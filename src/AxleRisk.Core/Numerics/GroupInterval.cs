namespace AxleRisk.Core.Numerics;

/// <summary>
/// 95 % intervals from groups of samples: for a mean, the delete-one-group jackknife of equal groups, which is Student's
/// interval of the groups' values; for a ratio the same on the scale of the logarithm, linearised.
/// </summary>
internal static class GroupInterval
{
    /// <summary>Groups of independent samples: enough for a stable standard error, few enough to be cheap.</summary>
    public const int Independent = 32;

    /// <summary>An estimate whose groups have these values.</summary>
    public static Interval Around(double estimate, IEnumerable<double> values)
    {
        double half = HalfWidth(values);
        return new Interval(estimate, estimate - half, estimate + half);
    }

    /// <summary>A positive estimate whose groups have these values on the scale of the logarithm, up to a constant.</summary>
    public static Interval AroundExp(double estimate, IEnumerable<double> lnValues)
    {
        double spread = Math.Exp(HalfWidth(lnValues));
        return new Interval(estimate, estimate / spread, estimate * spread);
    }

    private static double HalfWidth(IEnumerable<double> values)
    {
        RunningMoments moments = default;
        foreach (double value in values)
        {
            moments.Add(value);
        }

        return moments.Count < 2 ? double.NaN : -StudentT.Quantile(0.025, moments.Count - 1) * moments.StandardError;
    }
}
