using System.Collections.Immutable;

namespace AxleRisk.Core.Distributions;

/// <summary>
/// The PERT distribution (Malcolm and others 1959): a beta distribution given by a least, a most likely and a greatest value,
/// with mean (low + lambda mode + high) / (lambda + 2).
/// </summary>
public sealed class Pert : Distribution
{
    private readonly ScaledBeta beta;

    /// <summary>Creates a PERT distribution.</summary>
    /// <param name="low">The least value, finite.</param>
    /// <param name="mode">The most likely value, from <paramref name="low"/> to <paramref name="high"/>.</param>
    /// <param name="high">The greatest value, above the least.</param>
    /// <param name="shape">The weight lambda of the most likely value, above 0; 4 by custom, larger is more peaked.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Pert(double low, double mode, double high, double shape = 4)
    {
        Minimum = Check.Finite(low, "low");
        Maximum = Check.Above(high, low, "high", "low");
        Mode = Check.Between(mode, low, high, "mode");
        Shape = Check.Shape(shape, "shape");
        double width = high - low;
        beta = new ScaledBeta(1 + (shape * (mode - low) / width), 1 + (shape * (high - mode) / width), low, high);
    }

    /// <summary>The most likely value.</summary>
    public double Mode { get; }

    /// <summary>The weight lambda of the most likely value.</summary>
    public double Shape { get; }

    /// <summary>First shape of the beta distribution.</summary>
    public double Alpha => beta.Alpha;

    /// <summary>Second shape of the beta distribution.</summary>
    public double Beta => beta.Beta;

    /// <inheritdoc/>
    public override string Family => "pert";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [
        new("low", Minimum), new("mode", Mode), new("high", Maximum), new("shape", Shape)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum { get; }

    /// <inheritdoc/>
    public override double Mean => beta.Mean;

    /// <inheritdoc/>
    public override double StandardDeviation => beta.StandardDeviation;

    /// <inheritdoc/>
    public override double Density(double x) => beta.Density(x);

    /// <inheritdoc/>
    public override double Cumulative(double x) => beta.Cumulative(x);

    /// <inheritdoc/>
    public override double Upper(double x) => beta.Upper(x);

    /// <inheritdoc/>
    public override double Quantile(double p) => beta.Quantile(p);

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => beta.UpperQuantile(q);

    /// <inheritdoc/>
    public override void Quantiles(ReadOnlySpan<double> p, Span<double> x) => beta.Quantiles(p, x);

    /// <inheritdoc/>
    public override void OfScores(ReadOnlySpan<double> z, Span<double> x) => beta.OfScores(z, x);
}
