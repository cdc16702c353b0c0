using System.Collections.Immutable;

namespace AxleRisk.Core.Distributions;

/// <summary>
/// The distribution of a measured sample: its quantile interpolates linearly between the ordered values, the ith of n standing
/// at (i - 1) / (n - 1) (type 7 of Hyndman and Fan 1996). Values never lie outside the sample's range.
/// </summary>
public sealed class Empirical : Distribution
{
    private readonly double[] sorted;

    /// <summary>Creates the distribution of a sample.</summary>
    /// <param name="sample">The measured values in any order, finite, at least two of them different.</param>
    /// <exception cref="DistributionException">A value is not finite, or all are equal.</exception>
    public Empirical(IEnumerable<double> sample)
    {
        sorted = [.. sample.Select(x => Check.Finite(x, "values")).Order()];
        if (sorted.Length == 0 || !(sorted[^1] > sorted[0]))
        {
            throw new DistributionException("a sample needs at least two different values", "values");
        }

        // Exact for the interpolated quantile: between two values it is uniform.
        Mean = Average((a, b) => (a + b) / 2);
        StandardDeviation = Math.Sqrt(Average((a, b) => (((a - Mean) * (a - Mean)) + ((a - Mean) * (b - Mean)) + ((b - Mean) * (b - Mean)))
            / 3));
    }

    /// <summary>The ordered values.</summary>
    public ReadOnlySpan<double> Sorted => sorted;

    /// <inheritdoc/>
    public override string Family => "sample";

    /// <summary>The size and range of the sample; the values themselves are <see cref="Sorted"/>.</summary>
    public override ImmutableArray<Parameter> Parameters => [new("count", sorted.Length), new("low", Minimum), new("high", Maximum)];

    /// <inheritdoc/>
    public override double Minimum => sorted[0];

    /// <inheritdoc/>
    public override double Maximum => sorted[^1];

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double StandardDeviation { get; }

    /// <inheritdoc/>
    public override bool IsContinuous => false;

    private double Gaps => sorted.Length - 1;

    /// <summary>The probability of exactly <paramref name="x"/>: above 0 only where the sample holds x more than once.</summary>
    public override double Density(double x) => Math.Max(0, CountBelow(x, orEqual: true) - CountBelow(x, orEqual: false) - 1) / Gaps;

    /// <inheritdoc/>
    public override double Cumulative(double x)
    {
        if (!(x >= Minimum && x < Maximum))
        {
            return x < Minimum ? 0 : 1;
        }

        int i = CountBelow(x, orEqual: true) - 1;
        return (i + ((x - sorted[i]) / (sorted[i + 1] - sorted[i]))) / Gaps;
    }

    /// <inheritdoc/>
    public override double Quantile(double p)
    {
        double h = Math.Clamp(p, 0, 1) * Gaps;
        int i = Math.Min((int)h, sorted.Length - 2);
        return sorted[i] + ((h - i) * (sorted[i + 1] - sorted[i]));
    }

    private double Average(Func<double, double, double> ofGap) => sorted.Skip(1).Select((b, i) => ofGap(sorted[i], b)).Sum() / Gaps;

    private int CountBelow(double x, bool orEqual)
    {
        int low = 0;
        int high = sorted.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            bool below = orEqual ? sorted[middle] <= x : sorted[middle] < x;
            (low, high) = below ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
