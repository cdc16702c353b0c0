using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;
using LineAxis = AxleRisk.App.Charts.ChartAxis;
using LineMark = AxleRisk.App.Charts.ChartMark;

namespace AxleRisk.App.Answers;

/// <summary>A figure of a report drawn with characters.</summary>
internal static class FigureLines
{
    private const int Height = 14;

    public static IEnumerable<TextLine> Of(Figure figure, int width) => figure.Picture.Chart is not CurveChart curve ? [] :
    [
        .. Lines(Draw(curve).Draw(width, Height)),
    ];

    private static LineChart Draw(CurveChart chart)
    {
        double[] x = [.. chart.Curve.Select(p => p.X)];
        return new LineChart(Axis(chart.Across), Axis(chart.Upward))
        {
            Series = [new ChartSeries("", x, [.. chart.Curve.Select(p => p.Y.Estimate)])],
            Bands = [new ChartBand("95 %", x, [.. chart.Curve.Select(p => p.Y.Low)], [.. chart.Curve.Select(p => p.Y.High)])],
            Marks = double.IsFinite(chart.Marked.X) ? [new LineMark(chart.Marked.X, chart.MarkedLabel[0])] : [],
        };
    }

    private static LineAxis Axis(Reports.Charts.ChartAxis axis) => new(axis.Title, axis.IsLog, axis.Label);

    private static IEnumerable<TextLine> Lines(Charts.Picture picture) => picture.Lines().Select(line => new TextLine(line));
}
