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

    public static IEnumerable<TextLine> Of(Figure figure, int width) => figure.Picture.Chart switch
    {
        CurveChart curve => Lines(Draw(curve).Draw(width, Height)),
        PaperChart paper => Lines(Draw(paper).Draw(width, Height + 2)),
        _ => [],
    };

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

    private static LineChart Draw(PaperChart chart)
    {
        static double[] X(IEnumerable<CurvePoint> points) => [.. points.Select(p => p.X)];
        static double[] Y(IEnumerable<CurvePoint> points) => [.. points.Select(p => p.Y.Estimate)];
        LineAxis up = Axis(chart.Upward);
        double[] heights = [.. chart.Curves.SelectMany(c => Y(c.Points)).Concat(chart.Points.SelectMany(p => Y(p.Points)))];
        return new LineChart(
            Axis(chart.Across),
            chart.Upward.IsProbability ? up with { IsProbability = true, Range = Reports.Charts.ChartAxis.RangeOf(heights) }
            : chart.FromZero ? up with { Range = (0, 1.05 * heights.Max()) } : up)
        {
            Series = [.. chart.Curves.Select((c, i) => new ChartSeries(c.Name, X(c.Points), Y(c.Points), (Dash)Math.Min(i, 2)))],
            Bands =
            [
                .. chart.Curves.Where(c => c.HasBand).Select(c => new ChartBand(
                    "95 %", X(c.Points), [.. c.Points.Select(p => p.Y.Low)], [.. c.Points.Select(p => p.Y.High)])).Take(1),
            ],
            Points = [.. chart.Points.Select(p => new ChartPoints(p.Name, X(p.Points), Y(p.Points)))],
        };
    }

    private static LineAxis Axis(Reports.Charts.ChartAxis axis) => new(axis.Title, axis.IsLog, axis.Label);

    private static IEnumerable<TextLine> Lines(Charts.Picture picture) => picture.Lines().Select(line => new TextLine(line));
}
