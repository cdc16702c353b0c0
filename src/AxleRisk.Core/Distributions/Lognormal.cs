using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Distributions;

/// <summary>The lognormal distribution, given by its median and the standard deviation of the natural logarithm.</summary>
public sealed class Lognormal : Distribution
{
    /// <summary>Creates a lognormal distribution.</summary>
    /// <param name="median">The median, above 0.</param>
    /// <param name="standardDeviationOfLn">The standard deviation of ln X, above 0.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Lognormal(double median, double standardDeviationOfLn)
    {
        MedianValue = Check.Positive(median, "median");
        StandardDeviationOfLn = Check.Positive(standardDeviationOfLn, "sd_ln");
    }

    /// <summary>The median.</summary>
    public double MedianValue { get; }

    /// <summary>The standard deviation of ln X.</summary>
    public double StandardDeviationOfLn { get; }

    /// <inheritdoc/>
    public override string Family => "lognormal";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("median", MedianValue), new("sd_ln", StandardDeviationOfLn)];

    /// <inheritdoc/>
    public override double Minimum => 0;

    /// <inheritdoc/>
    public override double Maximum => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Mean => MedianValue * Math.Exp(StandardDeviationOfLn * StandardDeviationOfLn / 2);

    /// <inheritdoc/>
    public override double StandardDeviation => Mean * Math.Sqrt(LogExp.ExpM1(StandardDeviationOfLn * StandardDeviationOfLn));

    /// <summary>The lognormal distribution of a median and a coefficient of variation: sd_ln = sqrt(ln(1 + CoV^2)).</summary>
    /// <exception cref="DistributionException">A parameter is not above 0.</exception>
    public static Lognormal FromMedianAndCov(double median, double cov) => new(median, StandardDeviationOfLnFor(cov));

    /// <summary>The lognormal distribution of a mean and a coefficient of variation: median = mean / sqrt(1 + CoV^2).</summary>
    /// <exception cref="DistributionException">A parameter is not above 0.</exception>
    public static Lognormal FromMeanAndCov(double mean, double cov)
    {
        double standardDeviationOfLn = StandardDeviationOfLnFor(cov);
        return new(Check.Positive(mean, "mean") * Math.Exp(-standardDeviationOfLn * standardDeviationOfLn / 2), standardDeviationOfLn);
    }

    /// <inheritdoc/>
    public override double Density(double x) =>
        x > 0 ? StandardNormal.Density(Math.Log(x / MedianValue) / StandardDeviationOfLn) / (x * StandardDeviationOfLn) : 0;

    /// <inheritdoc/>
    public override double Cumulative(double x) =>
        x > 0 ? StandardNormal.Cumulative(Math.Log(x / MedianValue) / StandardDeviationOfLn) : 0;

    /// <inheritdoc/>
    public override double Upper(double x) =>
        x > 0 ? StandardNormal.Upper(Math.Log(x / MedianValue) / StandardDeviationOfLn) : 1;

    /// <inheritdoc/>
    public override void Quantiles(ReadOnlySpan<double> p, Span<double> x)
    {
        StandardNormal.Quantiles(p, x);
        VectorColumns.ScaledExp(x, StandardDeviationOfLn, MedianValue, x);
    }

    /// <inheritdoc/>
    public override void OfScores(ReadOnlySpan<double> z, Span<double> x) =>
        VectorColumns.ScaledExp(z, StandardDeviationOfLn, MedianValue, x);

    /// <inheritdoc/>
    public override double Quantile(double p) => MedianValue * Math.Exp(StandardDeviationOfLn * StandardNormal.Quantile(p));

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => MedianValue * Math.Exp(-StandardDeviationOfLn * StandardNormal.Quantile(q));

    private static double StandardDeviationOfLnFor(double cov) =>
        Math.Sqrt(LogExp.LogP1(Math.Pow(Check.Positive(cov, "cov"), 2)));
}
