namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>From spectral moments and an S-N curve to Miner damage per second.</summary>
internal static class DamageRate
{
    /// <summary>
    /// Damage per second of a stationary Gaussian stress. No signal does no damage; an infinite scale does infinite damage. Finite input
    /// never gives NaN; NaN in gives NaN out.
    /// </summary>
    /// <param name="moments">Moments of the stress, or of the force that causes it.</param>
    /// <param name="stressScale">MPa per unit of the moments' signal, not negative: 1 for moments of the stress itself.</param>
    /// <param name="curve">The curve.</param>
    /// <param name="method">How cycles are counted.</param>
    public static double PerSecond(in SpectralMoments moments, double stressScale, SnConstants curve, CountingMethod method)
    {
        if (double.IsPositiveInfinity(stressScale) || double.IsPositiveInfinity(stressScale * moments.Rms))
        {
            return double.PositiveInfinity;
        }

        if (moments.M0 == 0)
        {
            return 0;
        }

        return method switch
        {
            CountingMethod.Dirlik => Dirlik.DamagePerSecond(moments, stressScale, curve),
            CountingMethod.NarrowBand => NarrowBand.DamagePerSecond(moments, stressScale, curve),
            CountingMethod.TovoBenasciutti => TovoBenasciutti.DamagePerSecond(moments, stressScale, curve),
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Unknown counting method"),
        };
    }
}
