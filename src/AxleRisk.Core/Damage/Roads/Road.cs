namespace AxleRisk.Core.Damage.Roads;

/// <summary>The road's displacement spectral density over wavenumber, ISO 8608:2016.</summary>
internal static class Road
{
    /// <summary>The wavenumber at which roughness is stated, cycles/m.</summary>
    public const double ReferenceWavenumber = 0.1;

    /// <summary>One-sided density, m^3: <c>Gd(n) = Gd(n0) (n/n0)^-w</c>.</summary>
    /// <param name="n">Wavenumber, cycles/m, above 0.</param>
    /// <param name="gd0">Density at 0.1 cycles/m, m^3.</param>
    /// <param name="waviness">The exponent w; 2 in the standard.</param>
    public static double Psd(double n, double gd0, double waviness) => gd0 * Math.Pow(n / ReferenceWavenumber, -waviness);
}
