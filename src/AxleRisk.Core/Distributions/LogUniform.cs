using System.Collections.Immutable;

namespace AxleRisk.Core.Distributions;

/// <summary>The log-uniform (reciprocal) distribution: ln X is uniform between the logarithms of two positive ends.</summary>
public sealed class LogUniform : Distribution
{
    private readonly double logRatio;

    /// <summary>Creates a log-uniform distribution.</summary>
    /// <param name="low">The lower end, above 0.</param>
    /// <param name="high">The upper end, above the lower.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public LogUniform(double low, double high)
    {
        Minimum = Check.Positive(low, "low");
        Maximum = Check.Above(high, low, "high", "low");
        logRatio = Math.Log(high / low);
    }

    /// <inheritdoc/>
    public override string Family => "log-uniform";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("low", Minimum), new("high", Maximum)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum { get; }

    /// <inheritdoc/>
    public override double Mean => (Maximum - Minimum) / logRatio;

    /// <inheritdoc/>
    public override double StandardDeviation =>
        Math.Sqrt((((Maximum * Maximum) - (Minimum * Minimum)) / (2 * logRatio)) - (Mean * Mean));

    /// <inheritdoc/>
    public override double Density(double x) => x >= Minimum && x <= Maximum ? 1 / (x * logRatio) : 0;

    /// <inheritdoc/>
    public override double Cumulative(double x) =>
        x <= Minimum ? 0 : x >= Maximum ? 1 : Math.Log(x / Minimum) / logRatio;

    /// <inheritdoc/>
    public override double Quantile(double p) => p >= 1 ? Maximum : Minimum * Math.Exp(p * logRatio);
}
