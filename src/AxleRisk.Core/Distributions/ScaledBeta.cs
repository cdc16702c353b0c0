using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Distributions;

/// <summary>The beta distribution between two ends.</summary>
public sealed class ScaledBeta : Distribution
{
    private readonly TabledQuantile logitQuantile;

    /// <summary>Creates a beta distribution.</summary>
    /// <param name="alpha">First shape, above 0: the larger, the less weight near <paramref name="low"/>.</param>
    /// <param name="beta">Second shape, above 0: the larger, the less weight near <paramref name="high"/>.</param>
    /// <param name="low">The lower end, finite.</param>
    /// <param name="high">The upper end, above the lower.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public ScaledBeta(double alpha, double beta, double low = 0, double high = 1)
    {
        Alpha = Check.Shape(alpha, "alpha");
        Beta = Check.Shape(beta, "beta");
        Minimum = Check.Finite(low, "low");
        Maximum = Check.Above(high, low, "high", "low");
        logitQuantile = new((lower, upper) => IncompleteBeta.LogitQuantile(Alpha, Beta, lower, upper));
    }

    /// <summary>First shape.</summary>
    public double Alpha { get; }

    /// <summary>Second shape.</summary>
    public double Beta { get; }

    /// <inheritdoc/>
    public override string Family => "beta";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters =>
        [new("alpha", Alpha), new("beta", Beta), new("low", Minimum), new("high", Maximum)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum { get; }

    /// <inheritdoc/>
    public override double Mean => Minimum + (Width * Alpha / (Alpha + Beta));

    /// <inheritdoc/>
    public override double StandardDeviation =>
        Width / (Alpha + Beta) * Math.Sqrt(Alpha * Beta / (Alpha + Beta + 1));

    private double Width => Maximum - Minimum;

    /// <inheritdoc/>
    public override double Density(double x) =>
        !(x >= Minimum && x <= Maximum) ? 0
        : x == Minimum ? AtEnd(Alpha, Beta)
        : x == Maximum ? AtEnd(Beta, Alpha)
        : IncompleteBeta.Slope(Alpha, Beta, Math.Log((x - Minimum) / Width), Math.Log((Maximum - x) / Width))
            * (Width / (x - Minimum) / (Maximum - x));

    /// <inheritdoc/>
    public override double Cumulative(double x) => x <= Minimum ? 0 : x >= Maximum ? 1 : TailsAt(x).Lower;

    /// <inheritdoc/>
    public override double Upper(double x) => x <= Minimum ? 1 : x >= Maximum ? 0 : TailsAt(x).Upper;

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
        logitQuantile.Fill(z, x);
        VectorColumns.Logistic(x, Minimum, Maximum, x);
    }

    private double Quantile(double lower, double upper)
    {
        if (!(lower > 0 && upper > 0))
        {
            return lower > 0 ? Maximum : Minimum;
        }

        double logit = IncompleteBeta.LogitQuantile(Alpha, Beta, lower, upper);

        // From the nearer end, so that the distance to it keeps its digits.
        return logit < 0
            ? Minimum + (Width / (1 + Math.Exp(-logit)))
            : Maximum - (Width / (1 + Math.Exp(logit)));
    }

    private Tails TailsAt(double x) => IncompleteBeta.At(Alpha, Beta, (x - Minimum) / Width, (Maximum - x) / Width);

    /// <summary>The density at the end whose shape is <paramref name="shape"/>.</summary>
    private double AtEnd(double shape, double other) =>
        shape < 1 ? double.PositiveInfinity : shape == 1 ? other / Width : 0;
}
