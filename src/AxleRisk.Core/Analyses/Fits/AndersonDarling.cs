using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>
/// The statistic of Anderson and Darling (1952): the squared distance between sample and distribution, weighted most in the
/// tails, A^2 = -n - (1/n) sum (2i - 1) (ln F(x_i) + ln(1 - F(x_(n+1-i)))).
/// </summary>
internal static class AndersonDarling
{
    /// <summary>The statistic; infinite where a value lies at or beyond an end of the distribution.</summary>
    /// <param name="distribution">The distribution.</param>
    /// <param name="sorted">The values, ascending.</param>
    public static double Of(Distribution distribution, ReadOnlySpan<double> sorted)
    {
        int n = sorted.Length;
        CompensatedSum sum = default;
        for (int i = 0; i < n; i++)
        {
            sum.Add(((2 * i) + 1) * (Math.Log(distribution.Cumulative(sorted[i])) + Math.Log(distribution.Upper(sorted[n - 1 - i]))));
        }

        return -n - (sum.Value / n);
    }
}
