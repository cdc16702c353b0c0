using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Distributions;

/// <summary>The exponential distribution: P(X &gt; x) = exp(-(x - location) / (mean - location)).</summary>
public sealed class Exponential : Distribution
{
    /// <summary>Creates an exponential distribution.</summary>
    /// <param name="mean">The mean of X itself, above the location.</param>
    /// <param name="location">The least value, finite.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Exponential(double mean, double location = 0)
    {
        Minimum = Check.Finite(location, "location");
        Mean = Check.Above(mean, location, "mean", "location");
        StandardDeviation = mean - location;
    }

    /// <inheritdoc/>
    public override string Family => "exponential";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("mean", Mean), new("location", Minimum)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double StandardDeviation { get; }

    /// <inheritdoc/>
    public override double Density(double x) => x >= Minimum ? Upper(x) / StandardDeviation : 0;

    /// <inheritdoc/>
    public override void Hazards(ReadOnlySpan<double> x, Span<double> hazard) =>
        VectorColumns.WeibullHazard(x, Minimum, StandardDeviation, 1, hazard);

    /// <inheritdoc/>
    public override double Cumulative(double x) => x > Minimum ? -LogExp.ExpM1((Minimum - x) / StandardDeviation) : 0;

    /// <inheritdoc/>
    public override double Upper(double x) => x > Minimum ? Math.Exp((Minimum - x) / StandardDeviation) : 1;

    /// <inheritdoc/>
    public override double Quantile(double p) => Minimum - (StandardDeviation * LogExp.LogP1(-p));

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => Minimum - (StandardDeviation * Math.Log(q));
}
