namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// Tovo and Benasciutti (2005; constants from memory): rainflow damage between its bounds, <c>b</c> times the level-crossing (narrow-band)
/// damage plus <c>1 - b</c> times the damage of range counting. On one slope this is <c>(b + (1 - b) a2^(m-1)) D_NB</c>.
/// </summary>
internal static class TovoBenasciutti
{
    /// <summary>The weight b of a spectrum that is not narrow band, 0 to 1.</summary>
    public static double Weight(in SpectralMoments moments)
    {
        double a1 = moments.Alpha1;
        double a2 = moments.Alpha2;
        double b = (a1 - a2) * (1.112 * (1 + a1 * a2 - (a1 + a2)) * Math.Exp(2.11 * a2) + (a1 - a2)) / ((a2 - 1) * (a2 - 1));
        return Math.Clamp(b, 0, 1);
    }

    /// <summary>Damage per second; <paramref name="stressScale"/> is MPa per unit of the moments' signal.</summary>
    public static double DamagePerSecond(in SpectralMoments moments, double stressScale, SnConstants curve)
    {
        double upper = NarrowBand.DamagePerSecond(moments, stressScale, curve);
        if (NarrowBand.IsLimitOf(moments))
        {
            return upper;
        }

        double b = Weight(moments);
        double lower = moments.PeaksPerSecond * Rayleigh.DamagePerCycle(stressScale * moments.Alpha2 * moments.Rms, curve);
        return b * upper + (1 - b) * lower;
    }
}
