using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Charts;

/// <summary>A range of values along an axis, linear or logarithmic.</summary>
/// <param name="Low">The value at the beginning.</param>
/// <param name="High">The value at the end, above the first.</param>
/// <param name="IsLog">Whether equal ratios are equally long.</param>
internal readonly record struct Scale(double Low, double High, bool IsLog)
{
    /// <summary>Whether equal steps of the normal quantile are equally long, as on probability paper: a normal CDF is straight.</summary>
    public bool IsProbability { get; init; }

    /// <summary>Where a value lies, 0 to 1; NaN for what has no place.</summary>
    public double Position(double value) => IsProbability
        ? value is > 0 and < 1
            ? (StandardNormal.Quantile(value) - StandardNormal.Quantile(Low))
                / (StandardNormal.Quantile(High) - StandardNormal.Quantile(Low))
            : double.NaN
        : IsLog
        ? value > 0 ? Math.Log(value / Low) / Math.Log(High / Low) : double.NaN
        : (value - Low) / (High - Low);

    /// <summary>The value at a place from 0 to 1.</summary>
    public double Value(double position) => IsProbability
        ? StandardNormal.Cumulative(
            StandardNormal.Quantile(Low) + (position * (StandardNormal.Quantile(High) - StandardNormal.Quantile(Low))))
        : IsLog ? Low * Math.Pow(High / Low, position) : Low + (position * (High - Low));

    /// <summary>
    /// The scale that holds all values that can be drawn; null where there are none. One value alone gets room around it.
    /// </summary>
    public static Scale? Of(IEnumerable<double> values, bool isLog)
    {
        (double low, double high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (double v in values)
        {
            if (double.IsFinite(v) && (!isLog || v > 0))
            {
                (low, high) = (Math.Min(low, v), Math.Max(high, v));
            }
        }

        if (!(low <= high))
        {
            return null;
        }

        // As good as constant: nothing is to be read from rounding errors.
        if (isLog)
        {
            return high / low > 1 + 1e-9 ? new Scale(low, high, true) : new Scale(low / 2, high * 2, true);
        }

        double room = low == 0 ? 1 : 0.1 * Math.Abs(low);
        return high - low > 1e-9 * Math.Max(Math.Abs(low), Math.Abs(high))
            ? new Scale(low, high, false) : new Scale(low - room, high + room, false);
    }

    /// <summary>The scale widened to full ticks.</summary>
    public Scale ToTicks(int most)
    {
        if (IsLog)
        {
            return new Scale(Math.Pow(10, Math.Floor(Math.Log10(Low) + 1e-9)), Math.Pow(10, Math.Ceiling(Math.Log10(High) - 1e-9)),
                true) is { } wide && wide.High > wide.Low ? wide : this;
        }

        double step = Ticks.Step(High - Low, most);
        return new Scale(step * Math.Floor((Low / step) + 1e-9), step * Math.Ceiling((High / step) - 1e-9), false);
    }
}
