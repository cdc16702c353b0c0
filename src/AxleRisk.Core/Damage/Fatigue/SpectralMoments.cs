namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>Moments <c>Mk = integral of f^k G(f) df</c> of a one-sided spectral density over frequency in Hz.</summary>
/// <param name="M0">The variance.</param>
/// <param name="M1">First moment.</param>
/// <param name="M2">Second moment.</param>
/// <param name="M4">Fourth moment.</param>
internal readonly record struct SpectralMoments(double M0, double M1, double M2, double M4)
{
    /// <summary>The root mean square, in the unit of the signal.</summary>
    public double Rms => Math.Sqrt(M0);

    /// <summary>Rate of upward crossings of the mean, 1/s (Rice 1944); 0 for no signal.</summary>
    public double UpCrossingsPerSecond => M0 == 0 ? 0 : Math.Sqrt(M2 / M0);

    /// <summary>Rate of peaks, 1/s (Rice 1944); 0 for no signal.</summary>
    public double PeaksPerSecond => M2 == 0 ? 0 : Math.Sqrt(M4 / M2);

    /// <summary>The bandwidth parameter M1 / sqrt(M0 M2); 1 for a narrow band.</summary>
    internal double Alpha1 => M1 / M0 / UpCrossingsPerSecond;

    /// <summary>The irregularity factor M2 / sqrt(M0 M4): up-crossings over peaks; 1 for a narrow band.</summary>
    internal double Alpha2 => UpCrossingsPerSecond / PeaksPerSecond;

    /// <summary>The moments of the signal times <paramref name="factor"/>.</summary>
    internal SpectralMoments Scale(double factor)
    {
        double square = factor * factor;
        return new(square * M0, square * M1, square * M2, square * M4);
    }

    /// <summary>The moments of the sum of two independent signals.</summary>
    internal SpectralMoments Plus(in SpectralMoments other) => new(M0 + other.M0, M1 + other.M1, M2 + other.M2, M4 + other.M4);
}
