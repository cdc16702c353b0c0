using AxleRisk.Core.Damage.Roads;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// The road of a leg as amplitudes of sinusoids in time: the same spectral density, band, enveloping and corrugation as the spectral
/// model's, sampled at the frequencies of <see cref="RecordGrid"/>.
/// </summary>
internal static class RoadAmplitudes
{
    /// <summary>
    /// Fills the standard deviation of the cosine's and of the sine's coefficient of every sinusoid, m. The two ends of the band
    /// count half,
    /// as in the trapezoid rule.
    /// </summary>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="contactLength">Contact length, m.</param>
    /// <param name="roughness">Density at 0.1 cycles/m, m^3.</param>
    /// <param name="waviness">Exponent of the road spectrum.</param>
    /// <param name="amplitudes">Takes <see cref="RecordGrid.Bins"/> values.</param>
    public static void Fill(double speed, double contactLength, double roughness, double waviness, Span<double> amplitudes) =>
        Fill(speed, contactLength, n => Road.Psd(n, roughness, waviness), amplitudes);

    /// <summary>The same with a corrugation of a wavelength and an RMS amplitude, m, on the road.</summary>
    public static void FillCorrugated(
        double speed, double contactLength, double roughness, double waviness, double wavelength, double rms, Span<double> amplitudes) =>
        Fill(speed, contactLength, n => Road.Psd(n, roughness, waviness) + Corrugation.Psd(n, wavelength, rms), amplitudes);

    private static void Fill(double speed, double contactLength, Func<double, double> psd, Span<double> amplitudes)
    {
        for (int i = 0; i < amplitudes.Length; i++)
        {
            double n = RecordGrid.Hz(i) / speed;
            double weight = i == 0 || i == RecordGrid.Bins - 1 ? 0.5 : 1;
            amplitudes[i] = Math.Sqrt(weight / RecordGrid.Seconds * psd(n) / speed * Enveloping.Gain(n, contactLength));
        }
    }
}
