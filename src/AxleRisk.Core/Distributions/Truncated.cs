using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Distributions;

/// <summary>A distribution cut at one end or both; what is kept is scaled up to probability 1.</summary>
public sealed class Truncated : Distribution
{
    /// <summary>The least part of a distribution that may be kept.</summary>
    public const double LeastKept = 1e-12;

    private readonly bool isUpperPart;
    private readonly bool isLowerPart;
    private readonly double lowerAtMinimum;
    private readonly double lowerAtMaximum;
    private readonly double upperAtMinimum;
    private readonly double upperAtMaximum;
    private readonly double kept;
    private readonly double? min;
    private readonly double? max;
    private readonly Lazy<(double Mean, double StandardDeviation)> moments;

    /// <summary>Cuts a distribution.</summary>
    /// <param name="inner">The distribution; not a choice and not cut already.</param>
    /// <param name="min">The least value kept; null leaves the lower end as it is.</param>
    /// <param name="max">The greatest value kept, above the least; null leaves the upper end as it is.</param>
    /// <exception cref="DistributionException">The limits are in the wrong order or keep less than <see cref="LeastKept"/>.</exception>
    public Truncated(Distribution inner, double? min, double? max)
    {
        if (inner is NumberChoice or Truncated)
        {
            throw new DistributionException($"{inner} cannot be cut: state it without the values you do not want");
        }

        Inner = inner;
        this.min = min is double low ? Check.Finite(low, "min") : null;
        this.max = max is not double high ? null : min is double least ? Check.Above(high, least, "max", "min") : Check.Finite(high, "max");
        Minimum = Math.Max(inner.Minimum, min ?? double.NegativeInfinity);
        Maximum = Math.Min(inner.Maximum, max ?? double.PositiveInfinity);

        double atom = inner.IsContinuous ? 0 : inner.Density(Minimum);
        lowerAtMinimum = inner.Cumulative(Minimum) - atom;
        lowerAtMaximum = inner.Cumulative(Maximum);
        upperAtMinimum = inner.Upper(Minimum) + atom;
        upperAtMaximum = inner.Upper(Maximum);

        // Differences are taken in the tail that the kept part lies in: those of probabilities near 1 have no digits.
        isUpperPart = Minimum > inner.Median;
        isLowerPart = Maximum < inner.Median;
        kept = isUpperPart ? upperAtMinimum - upperAtMaximum : lowerAtMaximum - lowerAtMinimum;
        if (!(Maximum > Minimum && kept >= LeastKept))
        {
            throw new DistributionException(
                $"{inner} has almost no probability between {Minimum:G6} and {Maximum:G6}: widen the limits", this.min is null
                    ? "max" : "min");
        }

        moments = new(() => QuantileMoments.Of(this, inner.IsContinuous ? 1.0 / 16 : 1.0 / 256));
    }

    /// <summary>The distribution before it was cut.</summary>
    public Distribution Inner { get; }

    /// <inheritdoc/>
    public override string Family => Inner.Family;

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters =>
        [.. Inner.Parameters, .. Limit("min", min), .. Limit("max", max)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum { get; }

    /// <summary>The mean, by numerical integration of the quantile on first use.</summary>
    public override double Mean => moments.Value.Mean;

    /// <summary>The standard deviation, by numerical integration of the quantile on first use.</summary>
    public override double StandardDeviation => moments.Value.StandardDeviation;

    /// <inheritdoc/>
    public override bool IsContinuous => Inner.IsContinuous;

    /// <inheritdoc/>
    public override double Density(double x) => x >= Minimum && x <= Maximum ? Inner.Density(x) / kept : 0;

    /// <inheritdoc/>
    public override double Cumulative(double x) =>
        x < Minimum ? 0 : x >= Maximum ? 1
        : Share(isUpperPart ? upperAtMinimum - Inner.Upper(x) : Inner.Cumulative(x) - lowerAtMinimum);

    /// <inheritdoc/>
    public override double Upper(double x) =>
        x < Minimum ? 1 : x >= Maximum ? 0
        : Share(isLowerPart ? lowerAtMaximum - Inner.Cumulative(x) : Inner.Upper(x) - upperAtMaximum);

    /// <inheritdoc/>
    public override double Quantile(double p) => Quantile(p, 1 - p);

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => Quantile(1 - q, q);

    /// <inheritdoc/>
    public override void Quantiles(ReadOnlySpan<double> p, Span<double> x)
    {
        if (isUpperPart)
        {
            // There the lower tail's probabilities have no digits: by the scores of the upper tail's.
            VectorColumns.Line(p, -kept, upperAtMaximum + kept, x);
            VectorColumns.Clamp(x, upperAtMaximum, upperAtMinimum);
            StandardNormal.Quantiles(x, x);
            VectorColumns.Scale(x, -1, x);
            Inner.OfScores(x, x);
        }
        else
        {
            VectorColumns.Line(p, kept, lowerAtMinimum, x);
            VectorColumns.Clamp(x, 0, 1);
            Inner.Quantiles(x, x);
        }

        VectorColumns.Clamp(x, Minimum, Maximum);
    }

    private static IEnumerable<Parameter> Limit(string name, double? value) => value is double x ? [new(name, x)] : [];

    private double Share(double probability) => Math.Clamp(probability / kept, 0, 1);

    private double Quantile(double p, double q)
    {
        if (!(p > 0 && q > 0))
        {
            return p > 0 ? Maximum : Minimum;
        }

        double lower = lowerAtMinimum + (p * kept);
        double upper = upperAtMaximum + (q * kept);
        double x = lower <= upper ? Inner.Quantile(lower) : Inner.UpperQuantile(upper);
        return Math.Clamp(x, Minimum, Maximum);
    }
}
