using System.Collections.Immutable;

namespace AxleRisk.Core.Distributions;

/// <summary>The uniform distribution: every value between two ends is equally likely.</summary>
public sealed class Uniform : Distribution
{
    /// <summary>Creates a uniform distribution.</summary>
    /// <param name="low">The lower end, finite.</param>
    /// <param name="high">The upper end, above the lower.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Uniform(double low, double high)
    {
        Minimum = Check.Finite(low, "low");
        Maximum = Check.Above(high, low, "high", "low");
    }

    /// <inheritdoc/>
    public override string Family => "uniform";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("low", Minimum), new("high", Maximum)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum { get; }

    /// <inheritdoc/>
    public override double Mean => (Minimum / 2) + (Maximum / 2);

    /// <inheritdoc/>
    public override double StandardDeviation => Width / Math.Sqrt(12);

    private double Width => Maximum - Minimum;

    /// <inheritdoc/>
    public override double Density(double x) => x >= Minimum && x <= Maximum ? 1 / Width : 0;

    /// <inheritdoc/>
    public override double Cumulative(double x) => Math.Clamp((x - Minimum) / Width, 0, 1);

    /// <inheritdoc/>
    public override double Upper(double x) => Math.Clamp((Maximum - x) / Width, 0, 1);

    /// <inheritdoc/>
    public override double Quantile(double p) => p < 0.5 ? Minimum + (p * Width) : Maximum - ((1 - p) * Width);

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => q < 0.5 ? Maximum - (q * Width) : Minimum + ((1 - q) * Width);
}
