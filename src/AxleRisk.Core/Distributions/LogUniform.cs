using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

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
        logRatio = LogExp.LogP1((high - low) / low);
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
    public override double StandardDeviation
    {
        get
        {
            double l2 = logRatio * logRatio;

            // sinh(L)/L - (sinh(L/2)/(L/2))^2, by its series where the difference would cancel.
            double variance = logRatio < 0.05
                ? l2 * ((1.0 / 12) + (l2 / 180) + (l2 * l2 / 6720))
                : (Math.Sinh(logRatio) / logRatio) - (2 * (Math.Cosh(logRatio) - 1) / l2);
            return Math.Sqrt(Minimum) * Math.Sqrt(Maximum) * Math.Sqrt(variance);
        }
    }

    /// <inheritdoc/>
    public override double Density(double x) => x >= Minimum && x <= Maximum ? 1 / (x * logRatio) : 0;

    /// <inheritdoc/>
    public override double Cumulative(double x) =>
        x <= Minimum ? 0 : x >= Maximum ? 1 : LogExp.LogP1((x - Minimum) / Minimum) / logRatio;

    /// <inheritdoc/>
    public override double Upper(double x) =>
        x <= Minimum ? 1 : x >= Maximum ? 0
        : (x < Maximum / 2 ? Math.Log(Maximum / x) : -LogExp.LogP1((x - Maximum) / Maximum)) / logRatio; // each where it keeps its digits

    /// <inheritdoc/>
    public override void Quantiles(ReadOnlySpan<double> p, Span<double> x)
    {
        VectorColumns.ScaledExp(p, logRatio, Minimum, x);
        for (int i = 0; i < x.Length; i++)
        {
            x[i] = Math.Min(Maximum, x[i]);
        }
    }

    /// <inheritdoc/>
    public override double Quantile(double p) => p >= 1 ? Maximum : Math.Min(Maximum, Minimum * Math.Exp(p * logRatio));

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => q >= 1 ? Minimum : Math.Max(Minimum, Maximum * Math.Exp(-q * logRatio));
}
