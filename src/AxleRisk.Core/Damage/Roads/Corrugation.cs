namespace AxleRisk.Core.Damage.Roads;

/// <summary>The spectral density that a corrugation adds to its road: a narrow Gaussian around one over the wavelength.</summary>
internal static class Corrugation
{
    /// <summary>Standard deviation of the Gaussian over its centre. Common practice, no source.</summary>
    public const double RelativeBandwidth = 0.1;

    private const double Sqrt2Pi = 2.5066282746310005024;

    /// <summary>One-sided density, m^3, of area <paramref name="rmsM"/> squared.</summary>
    /// <param name="n">Wavenumber, cycles/m.</param>
    /// <param name="wavelengthM">Wavelength, m, above 0.</param>
    /// <param name="rmsM">RMS amplitude, m.</param>
    public static double Psd(double n, double wavelengthM, double rmsM)
    {
        double width = RelativeBandwidth / wavelengthM;
        double z = (n - 1 / wavelengthM) / width;
        return rmsM * rmsM / (Sqrt2Pi * width) * Math.Exp(-0.5 * z * z);
    }
}
