using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Distributions;

/// <summary>The gamma distribution, given by shape and scale.</summary>
public sealed class Gamma : Distribution
{
    private readonly TabledQuantile logQuantile;

    /// <summary>Creates a gamma distribution.</summary>
    /// <param name="shape">The shape, above 0; accurate and quick from 0.01 to 1e5.</param>
    /// <param name="scale">The scale, above 0: mean = shape scale.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Gamma(double shape, double scale)
    {
        Shape = Check.Shape(shape, "shape");
        Scale = Check.Positive(scale, "scale");
        logQuantile = new((lower, upper) => IncompleteGamma.LogQuantile(Shape, lower, upper));
    }

    /// <summary>The shape.</summary>
    public double Shape { get; }

    /// <summary>The scale.</summary>
    public double Scale { get; }

    /// <inheritdoc/>
    public override string Family => "gamma";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("shape", Shape), new("scale", Scale)];

    /// <inheritdoc/>
    public override double Minimum => 0;

    /// <inheritdoc/>
    public override double Maximum => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Mean => Shape * Scale;

    /// <inheritdoc/>
    public override double StandardDeviation => Math.Sqrt(Shape) * Scale;

    /// <summary>The gamma distribution of a mean and a standard deviation.</summary>
    /// <exception cref="DistributionException">A parameter is not above 0.</exception>
    public static Gamma FromMeanAndSd(double mean, double standardDeviation)
    {
        double cov = Check.Positive(standardDeviation, "sd") / Check.Positive(mean, "mean");
        return new(1 / (cov * cov), standardDeviation * cov);
    }

    /// <inheritdoc/>
    public override double Density(double x) =>
        x > 0 ? IncompleteGamma.Slope(Shape, x / Scale, Math.Log(x / Scale)) / x
        : x == 0 && Shape <= 1 ? (Shape < 1 ? double.PositiveInfinity : 1 / Scale)
        : 0;

    /// <inheritdoc/>
    public override double Cumulative(double x) => x > 0 ? IncompleteGamma.At(Shape, Math.Log(x / Scale)).Lower : 0;

    /// <inheritdoc/>
    public override double Upper(double x) => x > 0 ? IncompleteGamma.At(Shape, Math.Log(x / Scale)).Upper : 1;

    /// <inheritdoc/>
    public override double Quantile(double p) => Quantile(p, 1 - p);

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => Quantile(1 - q, q);

    /// <inheritdoc/>
    public override void Quantiles(ReadOnlySpan<double> p, Span<double> x)
    {
        StandardNormal.Quantiles(p, x);
        FromScores(x, x);
    }

    /// <inheritdoc/>
    public override void OfScores(ReadOnlySpan<double> z, Span<double> x)
    {
        z.CopyTo(x);
        VectorColumns.Clamp(x, -GreatestScore, GreatestScore);
        FromScores(x, x);
    }

    private void FromScores(ReadOnlySpan<double> z, Span<double> x)
    {
        logQuantile.Fill(z, x);
        VectorColumns.ScaledExp(x, 1, Scale, x);
    }

    private double Quantile(double lower, double upper) =>
        !(lower > 0) ? 0 : !(upper > 0) ? double.PositiveInfinity
        : Scale * Math.Exp(IncompleteGamma.LogQuantile(Shape, lower, upper));
}
