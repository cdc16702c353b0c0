using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// The probabilities of all outer draws as drawn, each the mean of two independent parts of its inner draws, and without the error
/// of these. The difference of the parts gives the variance of that error without bias, in every sampling plan. A spread from which
/// it is to be taken out is drawn together about its mean, by the root of what share of its variance is not error; on the angular scale
/// asin(sqrt(p)), where the error of a proportion is about the same for all p (Bartlett 1936, Journal of the Royal Statistical Society
/// Supplement 3, 68-78), so that small probabilities stay small.
/// </summary>
/// <param name="parts">The means of each part by outer draw: two, or one where no error can be told.</param>
internal sealed class DrawMeans(double[][] parts)
{
    private const double TwoSided95 = 1.959963984540054;

    private double[]? corrected;
    private double[]? byReplicate;

    /// <summary>The means as drawn: their own mean is without bias, their spread too wide.</summary>
    public double[] AsDrawn { get; } = parts.Length == 1 ? parts[0] : [.. parts[0].Zip(parts[1], (a, b) => (a + b) / 2)];

    /// <summary>The probabilities without the error of the inner draws: of their spread.</summary>
    public double[] Corrected => corrected ??= ErrorShare == 0 ? AsDrawn : Together(AsDrawn);

    /// <summary>The same within each replicate, whose mean stays as it is: replicates tell the error of what is made of them.</summary>
    public double[] CorrectedByReplicate => byReplicate ??=
        ErrorShare == 0 ? AsDrawn : [.. AsDrawn.Chunk(AsDrawn.Length / NestedPlan.Replicates).SelectMany(Together)];

    /// <summary>The share of the variance between the means as drawn that is only the error of their inner draws, from 0 to 1.</summary>
    public double ErrorShare => Variance == 0 ? 0 : Math.Min(1, ErrorVariance * (AsDrawn.Length - 1) / AsDrawn.Length / Variance);

    private double ErrorVariance { get; } = parts.Length == 1 ? 0 : parts[0].Zip(parts[1], (a, b) => (a - b) * (a - b) / 4).Average();

    private double Variance => VarianceOf(AsDrawn);

    /// <summary>A sum of such probabilities, part by part, each from 0 to 1.</summary>
    public static DrawMeans Sum(IReadOnlyList<(double Weight, DrawMeans Means)> terms) => new(
        [.. Enumerable.Range(0, terms[0].Means.Parts.Length).Select(p => Enumerable.Range(0, terms[0].Means.AsDrawn.Length)
            .Select(draw => Math.Clamp(terms.Sum(t => t.Weight * t.Means.Parts[p][draw]), 0, 1)).ToArray())]);

    /// <summary>
    /// By what share the band of a count of so many vehicles may still be too wide or too narrow, 95 %: the variance of the error is
    /// itself an estimate. Of N draws with the variance b and errors of the variance e, b is known with the variance (4 e^2 + 4 b e) / N
    /// as far as the errors go (normal ones); the band is as wide as b and chance together.
    /// </summary>
    public double Residue(long vehicles)
    {
        double between = VarianceOf(Corrected);
        double chance = Corrected.Average(p => p * (1 - p)) / vehicles;
        double off = TwoSided95 * Math.Sqrt(((4 * ErrorVariance * ErrorVariance) + (4 * between * ErrorVariance)) / AsDrawn.Length);
        return off == 0 ? 0 : off / (2 * (between + chance));
    }

    /// <summary>The means of each part by outer draw.</summary>
    public double[][] Parts { get; } = parts;

    private static double VarianceOf(double[] values)
    {
        RunningMoments moments = default;
        foreach (double value in values)
        {
            moments.Add(value);
        }

        return moments.Variance * (values.Length - 1) / values.Length;
    }

    private double[] Together(double[] means)
    {
        double keep = Math.Sqrt(1 - ErrorShare);
        double mean = CompensatedSum.Of(means) / means.Length;
        double[] angles = [.. means.Select(p => Math.Asin(Math.Sqrt(p)))];
        double Moved(double angle, double centre) => Math.Pow(Math.Sin((keep * angle) + ((1 - keep) * centre)), 2);
        double Off(double centre) => angles.Average(a => Moved(a, centre)) - mean;

        // About the angle that leaves the mean as it is.
        (double low, double high) = (Off(0), Off(Math.PI / 2));
        double about = low >= 0 ? 0 : high <= 0 ? Math.PI / 2 : FalsePosition.Zero(Off, new(0, low), new(Math.PI / 2, high), 1e-10, 60);
        return [.. angles.Select(a => Moved(a, about))];
    }
}
