using System.Collections.Immutable;
using System.Globalization;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Distributions;

/// <summary>
/// A continuous or discrete distribution of one scalar, in the unit of the quantity it describes.
/// Immutable; the constructor or factory of each family rejects parameters that make no distribution
/// with a <see cref="DistributionException"/>.
/// </summary>
public abstract class Distribution
{
    /// <summary>The greatest normal score whose tail is a double of full precision: 1 - Phi(37) = 6e-300.</summary>
    public const double GreatestScore = 37;

    /// <summary>The family's name as it stands in a scenario file, e.g. <c>lognormal</c>.</summary>
    public abstract string Family { get; }

    /// <summary>The parameters under their names in a scenario file, in the order they are usually stated.</summary>
    public abstract ImmutableArray<Parameter> Parameters { get; }

    /// <summary>The least possible value; may be negative infinity.</summary>
    public abstract double Minimum { get; }

    /// <summary>The greatest possible value; may be positive infinity.</summary>
    public abstract double Maximum { get; }

    /// <summary>The mean; NaN or infinite where it does not exist.</summary>
    public abstract double Mean { get; }

    /// <summary>The standard deviation; NaN or infinite where it does not exist.</summary>
    public abstract double StandardDeviation { get; }

    /// <summary>The median, <c>Quantile(0.5)</c>.</summary>
    public double Median => Quantile(0.5);

    /// <summary>Whether the distribution has a density (false for a choice and for an empirical sample).</summary>
    public virtual bool IsContinuous => true;

    /// <summary>
    /// The probability density at <paramref name="x"/>; 0 outside the support. For a discrete distribution the probability of
    /// exactly <paramref name="x"/>.
    /// </summary>
    public abstract double Density(double x);

    /// <summary>P(X &lt;= <paramref name="x"/>), with full relative accuracy in the lower tail where the family allows it.</summary>
    public abstract double Cumulative(double x);

    /// <summary>P(X &gt; <paramref name="x"/>); the families override it so that it keeps its digits in the upper tail.</summary>
    public virtual double Upper(double x) => 1 - Cumulative(x);

    /// <summary>-ln P(X &gt; x) of a whole column: the cumulated hazard.</summary>
    public virtual void Hazards(ReadOnlySpan<double> x, Span<double> hazard)
    {
        for (int i = 0; i < x.Length; i++)
        {
            hazard[i] = Hazard(x[i]);
        }
    }

    /// <summary>-ln P(X &gt; x), which keeps its digits in both tails.</summary>
    public double Hazard(double x)
    {
        double failed = Cumulative(x);
        return failed < 0.5 ? -LogExp.LogP1(-failed) : -Math.Log(Upper(x));
    }

    /// <summary>The quantile: the least x with P(X &lt;= x) &gt;= <paramref name="p"/>; <paramref name="p"/> in [0, 1].</summary>
    public abstract double Quantile(double p);

    /// <summary>
    /// The x with P(X &gt; x) = <paramref name="q"/>: <c>Quantile(1 - q)</c> without the rounding of 1 - q, which a small q would
    /// not survive.
    /// </summary>
    public virtual double UpperQuantile(double q) => Quantile(1 - q);

    /// <summary>
    /// The quantiles of a whole column: <c>x[i] = Quantile(p[i])</c> but for the last bits, whatever the place in the column; the
    /// spans have one length and may be the same.
    /// </summary>
    public virtual void Quantiles(ReadOnlySpan<double> p, Span<double> x)
    {
        for (int i = 0; i < p.Length; i++)
        {
            x[i] = Quantile(p[i]);
        }
    }

    /// <summary>
    /// The values of a column of standard normal scores: <c>x[i] = Quantile(Phi(z[i]))</c>, by the tail that z lies in, so that a
    /// score of 30 keeps its digits where Phi(30) is 1. The spans have one length and may be the same.
    /// </summary>
    /// <param name="z">The scores, within +-<see cref="GreatestScore"/>; beyond they count as its ends.</param>
    /// <param name="x">Takes the values.</param>
    public virtual void OfScores(ReadOnlySpan<double> z, Span<double> x)
    {
        // Equal scores follow each other where one factor is varied at a time, as for a gradient.
        (double last, double value) = (double.NaN, double.NaN);
        for (int i = 0; i < z.Length; i++)
        {
            double score = Math.Clamp(z[i], -GreatestScore, GreatestScore);
            if (score != last)
            {
                last = score;
                value = score < 0 ? Quantile(StandardNormal.Cumulative(score)) : UpperQuantile(StandardNormal.Upper(score));
            }

            x[i] = value;
        }
    }

    /// <summary>Whether this is the same distribution as another: the same family with the same numbers.</summary>
    public bool IsSameAs(Distribution other) => ReferenceEquals(this, other)
        || (GetType() == other.GetType() && Parameters.SequenceEqual(other.Parameters)
            && Quantile(0.1) == other.Quantile(0.1) && Quantile(0.5) == other.Quantile(0.5) && Quantile(0.9) == other.Quantile(0.9));

    /// <summary>The family and its parameters in one line, e.g. <c>normal(mean 6, sd 0.25)</c>.</summary>
    public override string ToString() =>
        $"{Family}({string.Join(", ", Parameters.Select(p => $"{p.Name} {p.Value.ToString("G6", CultureInfo.InvariantCulture)}"))})";
}

/// <summary>One named parameter of a distribution, under its name in a scenario file.</summary>
public readonly record struct Parameter(string Name, double Value);

/// <summary>The parameters given make no distribution; the message says which one is wrong and what would be right.</summary>
public sealed class DistributionException : Exception
{
    /// <summary>Creates the exception with a message for the user, naming the parameter and what would be right.</summary>
    public DistributionException(string message, string? parameter = null)
        : base(message) => Parameter = parameter;

    /// <summary>The name of the parameter at fault, as in a scenario file; null where no single one is.</summary>
    public string? Parameter { get; }
}
