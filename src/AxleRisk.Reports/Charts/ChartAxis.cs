using AxleRisk.Core.Numerics;

namespace AxleRisk.Reports.Charts;

/// <summary>How an axis is labelled.</summary>
/// <param name="Title">What it measures, with the unit.</param>
/// <param name="Label">A round number of the axis as it is written there.</param>
/// <param name="IsLog">Whether equal steps are equal ratios.</param>
public sealed record ChartAxis(string Title, Func<double, string> Label, bool IsLog = false)
{
    /// <summary>Round probabilities, those first that are wanted where there is room for few.</summary>
    private static readonly double[] Probabilities =
        [0.01, 0.5, 0.1, 0.9, 0.001, 0.99, 1e-4, 1e-5, 1e-6, 0.999, 0.05, 0.2, 0.8, 0.95, 0.02, 0.005, 0.3, 0.7];

    /// <summary>The least and greatest probability that paper has room for.</summary>
    private const double LeastProbability = 1e-6, GreatestProbability = 0.999;

    /// <summary>Whether equal steps are equal steps of the normal quantile, as on probability paper; the values are then
    /// probabilities.</summary>
    public bool IsProbability { get; init; }

    /// <summary>The place of a value on the axis: the value, its decimal logarithm or its normal quantile.</summary>
    internal double Place(double value) => IsProbability ? StandardNormal.Quantile(value) : IsLog ? Math.Log10(value) : value;

    /// <summary>The part of a probability scale that holds values.</summary>
    public static (double Low, double High) RangeOf(IEnumerable<double> values)
    {
        double[] held = [.. values.Where(v => v is >= LeastProbability and <= GreatestProbability)];
        return held.Length == 0 ? (0.001, 0.5) : (held.Min(), Math.Max(held.Max(), 2 * held.Min()));
    }

    /// <summary>Whether the axis has a place for a value.</summary>
    internal bool Holds(double value) => double.IsFinite(Place(value));

    /// <summary>Round values between two, at most about <paramref name="most"/>.</summary>
    internal IReadOnlyList<double> Ticks(double low, double high, int most) => IsProbability
        ? [.. Probabilities.Where(p => p >= low && p <= high).Take(most).Order()]
        : IsLog ? AxisTicks.Log(low, high, most) : AxisTicks.Linear(low, high, most);
}
