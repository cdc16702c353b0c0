using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Distributions;

/// <summary>The normal distribution.</summary>
public sealed class Normal : Distribution
{
    /// <summary>Creates a normal distribution.</summary>
    /// <param name="mean">The mean, finite.</param>
    /// <param name="standardDeviation">The standard deviation, above 0.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Normal(double mean, double standardDeviation)
    {
        Mean = Check.Finite(mean, "mean");
        StandardDeviation = Check.Positive(standardDeviation, "sd");
    }

    /// <inheritdoc/>
    public override string Family => "normal";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("mean", Mean), new("sd", StandardDeviation)];

    /// <inheritdoc/>
    public override double Minimum => double.NegativeInfinity;

    /// <inheritdoc/>
    public override double Maximum => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double StandardDeviation { get; }

    /// <inheritdoc/>
    public override double Density(double x) => StandardNormal.Density((x - Mean) / StandardDeviation) / StandardDeviation;

    /// <inheritdoc/>
    public override double Cumulative(double x) => StandardNormal.Cumulative((x - Mean) / StandardDeviation);

    /// <inheritdoc/>
    public override double Upper(double x) => StandardNormal.Upper((x - Mean) / StandardDeviation);

    /// <inheritdoc/>
    public override void Quantiles(ReadOnlySpan<double> p, Span<double> x)
    {
        StandardNormal.Quantiles(p, x);
        VectorColumns.Line(x, StandardDeviation, Mean, x);
    }

    /// <inheritdoc/>
    public override void OfScores(ReadOnlySpan<double> z, Span<double> x) => VectorColumns.Line(z, StandardDeviation, Mean, x);

    /// <inheritdoc/>
    public override double Quantile(double p) => Mean + (StandardDeviation * StandardNormal.Quantile(p));

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => Mean - (StandardDeviation * StandardNormal.Quantile(q));
}
