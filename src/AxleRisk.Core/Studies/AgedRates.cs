namespace AxleRisk.Core.Studies;

/// <summary>
/// A rate per km that is known at some distances, straight in between and constant beyond the last. Where it becomes infinite (no wall is
/// left) it is taken as unchanged up to that distance.
/// </summary>
internal static class AgedRates
{
    /// <summary>The integral of the rate from 0 to a distance.</summary>
    /// <param name="rates">The rates, by distance and row.</param>
    /// <param name="agesKm">The distances, rising from 0.</param>
    /// <param name="row">The row.</param>
    /// <param name="km">The distance, km.</param>
    public static double Cumulated(double[][] rates, ReadOnlySpan<double> agesKm, int row, double km)
    {
        double sum = 0;
        for (int k = 0; k + 1 < agesKm.Length; k++)
        {
            double length = agesKm[k + 1] - agesKm[k];
            double x = Math.Min(km - agesKm[k], length);
            if (x <= 0)
                return sum;
            (double start, double end) = Ends(rates, k, row);
            sum += x * (start + 0.5 * (end - start) * x / length);
        }

        double rest = km - agesKm[^1];
        return rest > 0 ? sum + rest * rates[agesKm.Length - 1][row] : sum;
    }

    /// <summary>The distance at which the integral reaches a target above 0; infinite where it never does.</summary>
    public static double Inverse(double[][] rates, ReadOnlySpan<double> agesKm, int row, double target)
    {
        double left = target;
        for (int k = 0; k + 1 < agesKm.Length; k++)
        {
            double length = agesKm[k + 1] - agesKm[k];
            (double start, double end) = Ends(rates, k, row);
            double area = 0.5 * (start + end) * length;
            if (area >= left)
            {
                // start x + (end - start) x^2 / (2 length) = left, in the form that loses no digits.
                double root = Math.Sqrt(Math.Max(0, start * start + 2 * (end - start) * left / length));
                return double.IsInfinity(start) ? agesKm[k] : agesKm[k] + 2 * left / (start + root);
            }

            left -= area;
        }

        return agesKm[^1] + left / rates[agesKm.Length - 1][row];
    }

    private static (double Start, double End) Ends(double[][] rates, int k, int row)
    {
        double start = rates[k][row];
        double end = rates[k + 1][row];
        return (start, double.IsInfinity(end) ? start : end);
    }
}
