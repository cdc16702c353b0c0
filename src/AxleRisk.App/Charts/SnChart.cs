using AxleRisk.Core.Damage.Fatigue;

namespace AxleRisk.App.Charts;

/// <summary>S-N curves on logarithmic axes, the first as mean and design curve.</summary>
internal static class SnChart
{
    private const int Points = 121;
    private const double LeastCycles = 1e4, MostCycles = 1e9;

    /// <summary>Draws the design curves of one or more categories; of a single one its mean curve, too.</summary>
    public static Picture Draw(IReadOnlyList<SnCurve> design, int width, int height)
    {
        ChartSeries[] series = design.Count == 1
            ? [Series(design[0].Mean, "mean", Dash.Solid), Series(design[0], $"{design[0].Category} design", Dash.Dashed)]
            : [.. design.Select((c, i) => Series(c, c.Category, (Dash)(i % 3)))];
        return new LineChart(new ChartAxis("cycles N", IsLog: true) { Range = (LeastCycles, MostCycles) },
            new ChartAxis("stress range, MPa", IsLog: true))
        { Series = series }.Draw(width, height);
    }

    // By the stress range, from which the number of cycles follows; a cut-off is where it ends.
    private static ChartSeries Series(SnCurve curve, string name, Dash dash)
    {
        double high = curve.Lines[0].RangeMPa(LeastCycles);
        double low = Math.Max(curve.CutOffMPa, curve.Lines[^1].RangeMPa(MostCycles));
        double[] ranges = [.. Enumerable.Range(0, Points).Select(i => high * Math.Pow(low / high, i / (Points - 1.0)))];
        return new ChartSeries(name, [.. ranges.Select(curve.CyclesToFailure)], ranges, dash);
    }
}
