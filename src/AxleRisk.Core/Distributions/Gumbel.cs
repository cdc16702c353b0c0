using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using MathNet.Numerics;

namespace AxleRisk.Core.Distributions;

/// <summary>The Gumbel distribution of the greatest of many: P(X &lt;= x) = exp(-exp(-(x - location) / scale)).</summary>
public sealed class Gumbel : Distribution
{
    private const double SdOverScale = Math.PI / 2.449489742783178; // pi / sqrt(6)

    /// <summary>Creates a Gumbel distribution.</summary>
    /// <param name="location">The most likely value, finite.</param>
    /// <param name="scale">The scale, above 0.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Gumbel(double location, double scale)
    {
        Location = Check.Finite(location, "location");
        Scale = Check.Positive(scale, "scale");
    }

    /// <summary>The most likely value.</summary>
    public double Location { get; }

    /// <summary>The scale.</summary>
    public double Scale { get; }

    /// <inheritdoc/>
    public override string Family => "gumbel";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("location", Location), new("scale", Scale)];

    /// <inheritdoc/>
    public override double Minimum => double.NegativeInfinity;

    /// <inheritdoc/>
    public override double Maximum => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Mean => Location + (Constants.EulerMascheroni * Scale);

    /// <inheritdoc/>
    public override double StandardDeviation => SdOverScale * Scale;

    /// <summary>The Gumbel distribution of a mean and a standard deviation.</summary>
    /// <exception cref="DistributionException">The mean is not finite or the standard deviation not above 0.</exception>
    public static Gumbel FromMeanAndSd(double mean, double standardDeviation)
    {
        double scale = Check.Positive(standardDeviation, "sd") / SdOverScale;
        return new(Check.Finite(mean, "mean") - (Constants.EulerMascheroni * scale), scale);
    }

    /// <inheritdoc/>
    public override double Density(double x)
    {
        double z = (x - Location) / Scale;
        return z == double.NegativeInfinity ? 0 : Math.Exp(-z - Math.Exp(-z)) / Scale;
    }

    /// <inheritdoc/>
    public override double Cumulative(double x) => Math.Exp(-Rate(x));

    /// <inheritdoc/>
    public override double Upper(double x) => -LogExp.ExpM1(-Rate(x));

    /// <inheritdoc/>
    public override double Quantile(double p) => Location - (Scale * Math.Log(-Math.Log(p)));

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => Location - (Scale * Math.Log(-LogExp.LogP1(-q)));

    /// <summary>The expected number of exceedances of x.</summary>
    private double Rate(double x) => Math.Exp((Location - x) / Scale);
}
