using AxleRisk.App.Charts;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Tests.Charts;

/// <summary>One picture of each kind; all data are invented.</summary>
internal static class Gallery
{
    private static readonly double[] Km = [.. Enumerable.Range(0, 61).Select(i => 15_000 * Math.Pow(50, i / 60.0))];
    private static readonly double[] Failed = [.. Km.Select(km => StandardNormal.Cumulative(Math.Log(km / 900_000) / 1.25))];
    private static readonly string[] Factors = ["stress factor", "payload", "weld category", "speed factor", "speed on gravel"];
    private static readonly double[] Shares = [0.412, 0.218, 0.121, 0.048, 0.004];

    public static (int Width, int Height)[] Sizes { get; } = [(30, 9), (60, 14), (100, 20)];

    public static Dictionary<string, Func<int, int, Picture>> All { get; } = new()
    {
        ["failure-curve"] = FailureCurve(false).Draw,
        ["failure-curve-log"] = FailureCurve(true).Draw,
        ["two-lines"] = new LineChart(new ChartAxis("lateness"), new ChartAxis("value"))
        {
            Series =
            [
                new ChartSeries("sine", [.. Enumerable.Range(0, 50).Select(i => i / 8.0)],
                    [.. Enumerable.Range(0, 50).Select(i => Math.Sin(i / 8.0))]),
                new ChartSeries("half", [.. Enumerable.Range(0, 50).Select(i => i / 8.0)],
                    [.. Enumerable.Range(0, 50).Select(i => i == 25 ? double.NaN : 0.5 * Math.Cos(i / 8.0))], Dash.Dashed),
                new ChartSeries("line", [0, 6], [-1, 1], Dash.Dotted),
            ],
        }.Draw,
        ["constant"] = new LineChart(new ChartAxis("km"), new ChartAxis("share"))
        { Series = [new ChartSeries("", [1, 2, 3], [5, 5, 5])] }.Draw,
        ["one-point"] = new LineChart(new ChartAxis("km", IsLog: true), new ChartAxis("share", IsLog: true))
        { Series = [new ChartSeries("", [0, 1000, 2000], [0, 0.01, double.PositiveInfinity])] }.Draw,
        ["nothing"] = new LineChart(new ChartAxis("km"), new ChartAxis("share", IsLog: true))
        { Series = [new ChartSeries("", [1, 2], [0, double.NaN])] }.Draw,
        ["normal"] = (w, h) => DensityChart.Draw(new Normal(6, 0.25), "mm", w, h),
        ["truncated"] = (w, h) => DensityChart.Draw(new Truncated(new Normal(6, 0.4), 5.6, 6.4), "mm", w, h),
        ["exponential"] = (w, h) => DensityChart.Draw(new Exponential(0.1, 0), "mm", w, h),
        ["choice"] = (w, h) => DensityChart.Draw(new NumberChoice([0, 20, 30], [0.7, 0.2, 0.1]), "mm", w, h),
        ["sample"] = (w, h) => DensityChart.Draw(new Empirical(Enumerable.Range(1, 200)
            .Select(i => 6 + (0.3 * StandardNormal.Quantile(i / 201.0)))), "mm", w, h),
        ["ranking"] = (w, h) =>
            BarChart.Draw([.. Factors.Select((f, i) => new Bar(f, Shares[i], Shares[i] - (0.1 * Math.Sqrt(Shares[i])),
            Shares[i] + (0.1 * Math.Sqrt(Shares[i])), $"{100 * Shares[i]:0.0} %".PadLeft(6)))], w, h),
        ["bars"] = (w, h) => BarChart.Draw(
            [.. Factors.Select((f, i) => new Bar(f, i == 3 ? double.NaN : Shares[i], double.NaN, double.NaN, $"{Shares[i]:0.000}"))], w, h),
        ["pairs"] = (w, h) => HeatGrid.Draw(Factors, (r, c) => r == c ? double.NaN : Math.Round(40.0 / ((r + 1) * (c + 1))) - 3,
            v => v.ToString("+0;-0;0"), 12, w, h),
        ["sn-one"] = (w, h) => SnChart.Draw([SnCatalogue.Find("DNV-RP-C203", "F")!], w, h),
        ["sn-three"] = (w, h) =>
            SnChart.Draw([SnCatalogue.Find("EN 1993-1-9", "112")!, SnCatalogue.Find("EN 1993-1-9", "71")!,
            SnCatalogue.Find("EN 1993-1-9", "36")!], w, h),
    };

    private static LineChart FailureCurve(bool isLog) =>
        new(new ChartAxis("distance, km", isLog), new ChartAxis("failed", isLog, Ticks.Percent))
        {
            Series = [new ChartSeries("estimate", Km, Failed)],
            Bands = [new ChartBand("95 % interval", Km, [.. Failed.Select(p => Math.Max(0, p - (0.25 * Math.Sqrt(p * (1 - p)))))],
            [.. Failed.Select(p => p + (0.25 * Math.Sqrt(p * (1 - p))))])],
            Marks = [new ChartMark(150_000, "required")],
        };
}
