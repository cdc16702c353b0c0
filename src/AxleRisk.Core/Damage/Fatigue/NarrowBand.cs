namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// Narrow-band counting: a Rayleigh range for every up-crossing of the mean (JCSS Probabilistic Model Code 3.12, annex B).
/// </summary>
internal static class NarrowBand
{
    /// <summary>
    /// Irregularity factors closer to 1 than this count as narrow band: beyond it the constants of the wide-band methods are differences
    /// of nearly equal numbers, up to 0/0, while their damage differs from the narrow band's by less than 1e-6 of itself.
    /// </summary>
    public const double Threshold = 1e-6;

    /// <summary>Whether the wide-band methods have no digits left; also where the moments themselves have none (underflow).</summary>
    public static bool IsLimitOf(in SpectralMoments moments) => !(1 - moments.Alpha2 >= Threshold);

    /// <summary>Damage per second; <paramref name="stressScale"/> is MPa per unit of the moments' signal.</summary>
    public static double DamagePerSecond(in SpectralMoments moments, double stressScale, SnConstants curve) =>
        moments.UpCrossingsPerSecond * Rayleigh.DamagePerCycle(stressScale * moments.Rms, curve);
}
