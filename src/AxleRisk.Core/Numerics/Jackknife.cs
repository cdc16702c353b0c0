namespace AxleRisk.Core.Numerics;

/// <summary>
/// The delete-one-group jackknife (Tukey 1958) for any statistic of sums: the samples are split into groups, each group
/// brings a vector of sums, and the statistic is a function of the total sums.
/// </summary>
internal static class Jackknife
{
    /// <summary>The statistic of all groups with its Student interval, one degree of freedom less than groups.</summary>
    /// <param name="groupSums">For each group, at least two, of equal size, its sums.</param>
    /// <param name="statistic">The statistic of a vector of sums; it must not keep the array.</param>
    /// <param name="confidence">The level, between 0 and 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, or their vectors differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static Interval Estimate(double[][] groupSums, Func<double[], double> statistic, double confidence = 0.95)
    {
        double tail = Confidence.Tail(confidence);
        (double estimate, double standardError) = WithStandardError(groupSums, statistic);
        double half = -StudentT.Quantile(tail, groupSums.Length - 1) * standardError;
        return new(estimate, estimate - half, estimate + half);
    }

    /// <summary>
    /// The statistic of all groups and its standard error, sqrt((g-1)/g sum of squared deviations of the g leave-one-out
    /// values from their mean).
    /// </summary>
    /// <inheritdoc cref="Estimate"/>
    public static (double Estimate, double StandardError) WithStandardError(double[][] groupSums, Func<double[], double> statistic)
    {
        int groups = groupSums.Length;
        double[] total = Total(groupSums), others = new double[total.Length];
        RunningMoments leftOut = default;
        foreach (double[] group in groupSums)
        {
            for (int i = 0; i < total.Length; i++)
            {
                others[i] = total[i] - group[i];
            }

            leftOut.Add(statistic(others));
        }

        return (statistic(total), Math.Sqrt((groups - 1.0) * (groups - 1) / groups * leftOut.Variance));
    }

    private static double[] Total(double[][] groupSums)
    {
        if (groupSums.Length < 2)
        {
            throw new ArgumentException("a jackknife needs at least two groups", nameof(groupSums));
        }

        CompensatedSum[] sums = new CompensatedSum[groupSums[0].Length];
        foreach (double[] group in groupSums)
        {
            if (group.Length != sums.Length)
            {
                throw new ArgumentException("the groups' vectors differ in length", nameof(groupSums));
            }

            for (int i = 0; i < sums.Length; i++)
            {
                sums[i].Add(group[i]);
            }
        }

        return Array.ConvertAll(sums, s => s.Value);
    }
}
