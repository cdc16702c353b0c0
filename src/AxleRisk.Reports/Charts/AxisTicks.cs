namespace AxleRisk.Reports.Charts;

/// <summary>Round numbers for an axis.</summary>
internal static class AxisTicks
{
    /// <summary>
    /// Multiples of 1, 2 or 5 times a power of ten from <paramref name="low"/> to <paramref name="high"/>, at most
    /// <paramref name="most"/> of
    /// them; of an axis without length its one value.
    /// </summary>
    public static IReadOnlyList<double> Linear(double low, double high, int most)
    {
        if (!(high > low))
        {
            return [low];
        }

        double least = (high - low) / most;
        double power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        double step = new[] { 1.0, 2, 5, 10 }.Select(m => m * power).First(s => s >= least * (1 - 1e-9));
        return [.. Steps(Math.Ceiling((low / step) - 1e-9), Math.Floor((high / step) + 1e-9)).Select(i => (i * step) + 0.0)];
    }

    /// <summary>
    /// Powers of ten from <paramref name="low"/> to <paramref name="high"/>, with 2 and 5 (or 3) times them where that many
    /// fit, every second or third power where not; the ends are above 0.
    /// </summary>
    public static IReadOnlyList<double> Log(double low, double high, int most)
    {
        int[] decades = [.. Steps(Math.Floor(Math.Log10(low)), Math.Ceiling(Math.Log10(high))).Select(d => (int)d)];
        foreach (double[] within in new double[][] { [1, 1.5, 2, 3, 4, 5, 6, 8], [1, 2, 5], [1, 3], [1] })
        {
            double[] all = [.. decades.SelectMany(d => within.Select(m => m * Math.Pow(10, d))).Where(IsInside)];
            if (all.Length <= most && all.Length > 1)
            {
                return all;
            }
        }

        int skip = 1 + (decades.Length / most);
        double[] sparse = [.. decades.Where(d => d % skip == 0).Select(d => Math.Pow(10, d)).Where(IsInside)];
        return sparse.Length > 0 ? sparse : Linear(low, high, most);

        bool IsInside(double x) => x >= low * (1 - 1e-9) && x <= high * (1 + 1e-9);
    }

    private static IEnumerable<double> Steps(double first, double last)
    {
        for (double i = first; i <= last; i++)
        {
            yield return i;
        }
    }
}
