namespace AxleRisk.Core.Damage.Yields;

/// <summary>First yield of the section under the largest load of the life.</summary>
internal static class YieldRate
{
    /// <summary>
    /// Rate at which a Gaussian stress about its static value leaves the elastic range, 1/s, by Rice's formula (1944) for both sides:
    /// <c>sqrt(m2/m0) [exp(-(fy - s)^2/2 m0) + exp(-(fy + s)^2/2 m0)]</c>. Exceedances this rare are taken as a Poisson process, so that
    /// the first comes after an exponential distance. Infinite where the static stress alone yields.
    /// </summary>
    /// <param name="staticMPa">Static stress s, MPa, not negative.</param>
    /// <param name="m0">Variance of the stress, MPa^2.</param>
    /// <param name="m2">Its second moment, MPa^2 Hz^2.</param>
    /// <param name="yieldMPa">Yield strength fy, MPa.</param>
    public static double PerSecond(double staticMPa, double m0, double m2, double yieldMPa)
    {
        if (!(staticMPa < yieldMPa))
        {
            return double.PositiveInfinity;
        }

        if (m0 == 0)
        {
            return 0;
        }

        return Math.Sqrt(m2 / m0) * (Side(yieldMPa - staticMPa, m0) + Side(yieldMPa + staticMPa, m0));
    }

    private static double Side(double level, double m0) => Math.Exp(-0.5 * level * level / m0);
}
