namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>Stated probabilities in ten bins against how often what they were stated of was true.</summary>
internal sealed class CalibrationTable
{
    private const int Count = 10;

    private readonly (int Cases, double Stated, int True)[] bins = new (int, double, int)[Count];

    public IEnumerable<(double From, double To, int Cases, double MeanStated, double Frequency)> Bins => bins.Select((b, i) =>
        ((double)i / Count, (i + 1.0) / Count, b.Cases, b.Stated / b.Cases, (double)b.True / b.Cases));

    public void Add(double stated, bool isTrue)
    {
        int bin = Math.Clamp((int)(stated * Count), 0, Count - 1);
        bins[bin] = (bins[bin].Cases + 1, bins[bin].Stated + stated, bins[bin].True + (isTrue ? 1 : 0));
    }
}
