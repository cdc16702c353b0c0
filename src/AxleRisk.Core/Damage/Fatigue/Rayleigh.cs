namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// Ranges of twice a Rayleigh amplitude: the Weibull density of shape 2 and scale 2 sqrt(2) times the standard deviation.
/// </summary>
internal static class Rayleigh
{
    private const double ScaleOverSigma = 2 * 1.4142135623730950488;

    /// <summary>Mean damage per cycle; <paramref name="sigmaMPa"/> is the standard deviation of the stress.</summary>
    public static double DamagePerCycle(double sigmaMPa, SnConstants curve) =>
        WeibullRanges.DamagePerCycle(ScaleOverSigma * sigmaMPa, 2, curve);
}
