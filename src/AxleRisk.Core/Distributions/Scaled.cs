using System.Collections.Immutable;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Distributions;

/// <summary>A distribution times a positive number, of a family that is not closed under scaling by its own parameters.</summary>
internal sealed class Scaled : Distribution
{
    private readonly Distribution inner;
    private readonly double factor;

    private Scaled(Distribution inner, double factor)
    {
        this.inner = inner;
        this.factor = factor;
    }

    /// <inheritdoc/>
    public override string Family => inner.Family;

    /// <summary>The parameters before scaling and, as <c>times</c>, the number.</summary>
    public override ImmutableArray<Parameter> Parameters => [.. inner.Parameters, new("times", factor)];

    /// <inheritdoc/>
    public override double Minimum => factor * inner.Minimum;

    /// <inheritdoc/>
    public override double Maximum => factor * inner.Maximum;

    /// <inheritdoc/>
    public override double Mean => factor * inner.Mean;

    /// <inheritdoc/>
    public override double StandardDeviation => factor * inner.StandardDeviation;

    /// <inheritdoc/>
    public override bool IsContinuous => inner.IsContinuous;

    /// <summary>
    /// The distribution of <paramref name="factor"/> times the value: of the same family where that has the parameters for it
    /// (a scaled lognormal is lognormal, and the exact methods go on knowing it), otherwise a <see cref="Scaled"/> one.
    /// </summary>
    /// <param name="distribution">The distribution.</param>
    /// <param name="factor">The number, finite and above 0.</param>
    /// <exception cref="DistributionException">The number is not finite and above 0.</exception>
    public static Distribution Of(Distribution distribution, double factor)
    {
        Check.Positive(factor, "times");
        return distribution switch
        {
            _ when factor == 1 => distribution,
            Normal n => new Normal(factor * n.Mean, factor * n.StandardDeviation),
            Lognormal l => new Lognormal(factor * l.MedianValue, l.StandardDeviationOfLn),
            NumberChoice c => new NumberChoice([.. c.Values.Select(v => factor * v)], c.Weights),
            Empirical e => new Empirical(e.Sorted.ToArray().Select(v => factor * v)),
            Truncated t => new Truncated(Of(t.Inner, factor), t.Minimum > t.Inner.Minimum ? factor * t.Minimum : null,
                t.Maximum < t.Inner.Maximum ? factor * t.Maximum : null),
            Scaled s => Of(s.inner, factor * s.factor),
            _ => new Scaled(distribution, factor),
        };
    }

    /// <inheritdoc/>
    public override double Density(double x) => x < Minimum || x > Maximum ? 0 : inner.Density(x / factor) / factor;

    /// <inheritdoc/>
    public override double Cumulative(double x) => x < Minimum ? 0 : x >= Maximum ? 1 : inner.Cumulative(x / factor);

    /// <inheritdoc/>
    public override double Upper(double x) => x < Minimum ? 1 : x >= Maximum ? 0 : inner.Upper(x / factor);

    /// <inheritdoc/>
    public override double Quantile(double p) => factor * inner.Quantile(p);

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => factor * inner.UpperQuantile(q);

    /// <inheritdoc/>
    public override void OfScores(ReadOnlySpan<double> z, Span<double> x)
    {
        inner.OfScores(z, x);
        VectorColumns.Scale(x, factor, x);
    }

    /// <inheritdoc/>
    public override void Quantiles(ReadOnlySpan<double> p, Span<double> x)
    {
        inner.Quantiles(p, x);
        for (int i = 0; i < x.Length; i++)
        {
            x[i] *= factor;
        }
    }
}
