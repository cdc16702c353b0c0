namespace AxleRisk.Reports.Charts;

/// <summary>How an axis is labelled.</summary>
/// <param name="Title">What it measures, with the unit.</param>
/// <param name="Label">A round number of the axis as it is written there.</param>
/// <param name="IsLog">Whether equal steps are equal ratios.</param>
public sealed record ChartAxis(string Title, Func<double, string> Label, bool IsLog = false)
{
    /// <summary>The place of a value on the axis: the value or its decimal logarithm.</summary>
    internal double Place(double value) => IsLog ? Math.Log10(value) : value;

    /// <summary>Whether the axis has a place for a value.</summary>
    internal bool Holds(double value) => double.IsFinite(Place(value));

    /// <summary>Round values between two, at most about <paramref name="most"/>.</summary>
    internal IReadOnlyList<double> Ticks(double low, double high, int most) =>
        IsLog ? AxisTicks.Log(low, high, most) : AxisTicks.Linear(low, high, most);
}
