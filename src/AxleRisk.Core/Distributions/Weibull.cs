using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using MathNet.Numerics;

namespace AxleRisk.Core.Distributions;

/// <summary>The Weibull distribution of the least of many: P(X &gt; x) = exp(-((x - location) / scale)^shape).</summary>
public sealed class Weibull : Distribution
{
    /// <summary>Creates a Weibull distribution.</summary>
    /// <param name="shape">The shape, above 0: the slope on Weibull paper.</param>
    /// <param name="scale">The scale, above 0: 63.2 % lie below location + scale.</param>
    /// <param name="location">The least value, finite.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Weibull(double shape, double scale, double location = 0)
    {
        Shape = Check.Positive(shape, "shape");
        Scale = Check.Positive(scale, "scale");
        Minimum = Check.Finite(location, "location");
    }

    /// <summary>The shape.</summary>
    public double Shape { get; }

    /// <summary>The scale.</summary>
    public double Scale { get; }

    /// <inheritdoc/>
    public override string Family => "weibull";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("shape", Shape), new("scale", Scale), new("location", Minimum)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Mean => Minimum + (Scale * SpecialFunctions.Gamma(1 + (1 / Shape)));

    /// <inheritdoc/>
    public override double StandardDeviation
    {
        get
        {
            // Gamma(1 + 2/k) / Gamma(1 + 1/k)^2 - 1 in logarithms: the two are nearly equal when the shape is large.
            double logMean = SpecialFunctions.GammaLn(1 + (1 / Shape));
            return Scale * Math.Exp(logMean)
                * Math.Sqrt(LogExp.ExpM1(SpecialFunctions.GammaLn(1 + (2 / Shape)) - (2 * logMean)));
        }
    }

    /// <inheritdoc/>
    public override double Density(double x)
    {
        if (x < Minimum)
        {
            return 0;
        }

        double t = (x - Minimum) / Scale;
        double hazard = Math.Pow(t, Shape);
        return hazard > 750 ? 0 // e^-750 is 0, and the other factor may overflow
            : t > 0 ? Shape / Scale * Math.Pow(t, Shape - 1) * Math.Exp(-hazard)
            : Shape < 1 ? double.PositiveInfinity
            : Shape == 1 ? 1 / Scale
            : 0;
    }

    /// <inheritdoc/>
    public override double Cumulative(double x) => x > Minimum ? -LogExp.ExpM1(-HazardAbove(x)) : 0;

    /// <inheritdoc/>
    public override double Upper(double x) => x > Minimum ? Math.Exp(-HazardAbove(x)) : 1;

    /// <inheritdoc/>
    public override double Quantile(double p) => Inverse(-LogExp.LogP1(-p));

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => Inverse(-Math.Log(q));

    /// <inheritdoc/>
    public override void Hazards(ReadOnlySpan<double> x, Span<double> hazard) =>
        VectorColumns.WeibullHazard(x, Minimum, Scale, Shape, hazard);

    private double HazardAbove(double x) => Math.Pow((x - Minimum) / Scale, Shape);

    private double Inverse(double hazard) => Minimum + (Scale * Math.Pow(hazard, 1 / Shape));
}
