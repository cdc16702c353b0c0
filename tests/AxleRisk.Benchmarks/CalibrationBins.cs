using System.Globalization;

namespace AxleRisk.Benchmarks;

/// <summary>Stated probabilities in ten bins, against how often what they were stated of was true.</summary>
internal sealed class CalibrationBins
{
    private const int Count = 10;

    private readonly (int Cases, double Stated, int True)[] bins = new (int, double, int)[Count];

    public void Add(double stated, bool isTrue)
    {
        int bin = Math.Clamp((int)(stated * Count), 0, Count - 1);
        bins[bin] = (bins[bin].Cases + 1, bins[bin].Stated + stated, bins[bin].True + (isTrue ? 1 : 0));
    }

    /// <summary>Prints a table in Markdown; the standard error is the binomial one of a calibrated bin.</summary>
    public void Print()
    {
        Console.WriteLine("| stated | statements | mean stated | true | standard error |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        for (int i = 0; i < Count; i++)
        {
            (int cases, double stated, int correct) = bins[i];
            if (cases > 0)
            {
                double mean = stated / cases;
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"| {100 * i / Count} to {100 * (i + 1) / Count} % | {cases} | {100 * mean:0.0} % | {100.0 * correct / cases:0.0} % | {100 * Math.Sqrt(mean * (1 - mean) / cases):0.0} % |"));
            }
        }
    }
}
