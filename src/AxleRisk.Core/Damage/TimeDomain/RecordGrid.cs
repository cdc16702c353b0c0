using AxleRisk.Core.Damage.Spectra;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// The grid of a synthesised record: one period of a sum of sinusoids at multiples of one over its length, from 0.25 to 50 Hz.
/// </summary>
internal static class RecordGrid
{
    /// <summary>
    /// Length of a record, s. The spacing of the sinusoids, 1/64 Hz, is a tenth of the width of a body bounce with worn dampers.
    /// </summary>
    public const int Seconds = 64;

    /// <summary>Samples a second of the coarsest record that holds the band: above twice 50 Hz, and a power of two.</summary>
    public const int BaseRate = 128;

    /// <summary>Samples of the coarsest record.</summary>
    public const int BaseSamples = Seconds * BaseRate;

    /// <summary>The sinusoid at 0.25 Hz.</summary>
    public const int LowestBin = (int)(FrequencyGrid.LowestHz * Seconds);

    /// <summary>The sinusoid at 50 Hz.</summary>
    public const int HighestBin = (int)(FrequencyGrid.HighestHz * Seconds);

    /// <summary>The number of sinusoids.</summary>
    public const int Bins = HighestBin - LowestBin + 1;

    /// <summary>Frequency of a sinusoid, Hz.</summary>
    /// <param name="index">Its number, from 0 at 0.25 Hz.</param>
    public static double Hz(int index) => (double)(LowestBin + index) / Seconds;
}
