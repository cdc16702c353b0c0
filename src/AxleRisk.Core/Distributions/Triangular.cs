using System.Collections.Immutable;

namespace AxleRisk.Core.Distributions;

/// <summary>The triangular distribution: a least, a most likely and a greatest value, straight lines between.</summary>
public sealed class Triangular : Distribution
{
    /// <summary>Creates a triangular distribution.</summary>
    /// <param name="low">The least value, finite.</param>
    /// <param name="mode">The most likely value, from <paramref name="low"/> to <paramref name="high"/>.</param>
    /// <param name="high">The greatest value, above the least.</param>
    /// <exception cref="DistributionException">A parameter is outside its range.</exception>
    public Triangular(double low, double mode, double high)
    {
        Minimum = Check.Finite(low, "low");
        Maximum = Check.Above(high, low, "high", "low");
        Mode = Check.Between(mode, low, high, "mode");
    }

    /// <summary>The most likely value.</summary>
    public double Mode { get; }

    /// <inheritdoc/>
    public override string Family => "triangular";

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => [new("low", Minimum), new("mode", Mode), new("high", Maximum)];

    /// <inheritdoc/>
    public override double Minimum { get; }

    /// <inheritdoc/>
    public override double Maximum { get; }

    /// <inheritdoc/>
    public override double Mean => Minimum + ((Rise + Width) / 3);

    /// <inheritdoc/>
    public override double StandardDeviation => Math.Sqrt(((Rise * Rise) + (Rise * Fall) + (Fall * Fall)) / 18);

    private double Width => Maximum - Minimum;

    private double Rise => Mode - Minimum;

    private double Fall => Maximum - Mode;

    /// <inheritdoc/>
    public override double Density(double x) =>
        !(x >= Minimum && x <= Maximum) ? 0
        : x < Mode ? 2 * (x - Minimum) / (Width * Rise)
        : x > Mode ? 2 * (Maximum - x) / (Width * Fall)
        : 2 / Width;

    /// <inheritdoc/>
    public override double Cumulative(double x) =>
        x <= Minimum ? 0 : x < Mode ? (x - Minimum) / Width * ((x - Minimum) / Rise) : 1 - Upper(x);

    /// <inheritdoc/>
    public override double Upper(double x) =>
        x >= Maximum ? 0 : x < Mode ? 1 - Cumulative(x) : (Maximum - x) / Width * ((Maximum - x) / Fall);

    /// <inheritdoc/>
    public override double Quantile(double p) => p * Width < Rise ? Below(p) : Above(1 - p);

    /// <inheritdoc/>
    public override double UpperQuantile(double q) => q * Width < Fall ? Above(q) : Below(1 - q);

    private double Below(double p) => p >= 1 ? Maximum : Math.Min(Maximum, Minimum + Math.Sqrt(p * Width * Rise));

    private double Above(double q) => q >= 1 ? Minimum : Math.Max(Minimum, Maximum - Math.Sqrt(q * Width * Fall));
}
