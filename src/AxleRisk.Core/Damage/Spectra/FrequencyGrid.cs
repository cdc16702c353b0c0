namespace AxleRisk.Core.Damage.Spectra;

/// <summary>The fixed grid of frequencies over which spectra are integrated: spaced evenly in ln f, trapezoid rule in ln f.</summary>
internal static class FrequencyGrid
{
    /// <summary>The lower limit of integration, Hz.</summary>
    public const double LowestHz = 0.25;

    /// <summary>The upper limit of integration, Hz.</summary>
    public const double HighestHz = 50;

    /// <summary>The number of points: the damage lies within 0.1 % of that of 8,000 points.</summary>
    public const int Points = 128;

    private static readonly double Step = Math.Log(HighestHz / LowestHz) / (Points - 1);

    private static readonly double[] Frequencies = MakeFrequencies();

    private static readonly double[] TrapezoidWeights = MakeWeights();

    /// <summary>The frequencies, Hz, rising.</summary>
    public static ReadOnlySpan<double> Hz => Frequencies;

    /// <summary>The weights, Hz: the integral of g is the sum of weight times g(f).</summary>
    public static ReadOnlySpan<double> Weights => TrapezoidWeights;

    private static double[] MakeFrequencies()
    {
        var f = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            f[i] = LowestHz * Math.Exp(Step * i);
        }

        f[^1] = HighestHz;
        return f;
    }

    // df = f d(ln f).
    private static double[] MakeWeights()
    {
        double[] w = [.. Frequencies.Select(f => f * Step)];
        w[0] /= 2;
        w[^1] /= 2;
        return w;
    }
}
