using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using ScottPlot;
using ScottPlot.Plottables;

namespace AxleRisk.Reports.Charts;

/// <summary>A curve with its band over a distance, and one distance marked.</summary>
/// <param name="Curve">The points of the curve, rising in x.</param>
/// <param name="Apart">Points found in another way: dots with their intervals.</param>
/// <param name="Marked">The point that the chart is about.</param>
/// <param name="MarkedLabel">What is written at it, one line each.</param>
/// <param name="Across">The axis below.</param>
/// <param name="Upward">The axis at the left.</param>
public sealed record CurveChart(
    ImmutableArray<CurvePoint> Curve, ImmutableArray<CurvePoint> Apart, CurvePoint Marked, ImmutableArray<string> MarkedLabel,
    ChartAxis Across, ChartAxis Upward) : Chart
{
    /// <summary>Whether the axis below begins at 0, where it is not logarithmic.</summary>
    public bool FromZero { get; init; } = true;

    /// <summary>
    /// Marked nearer to the left end than this share of the width, a label stands to the right of its line; narrow charts have a
    /// margin there.
    /// </summary>
    private const double LeftEnd = 0.4, NarrowLeftEnd = 0.55;

    /// <summary>Room above the curve, as shares of its height: that of the label too where the curve is high there.</summary>
    private const double Headroom = 0.08, LabelRoom = 0.26, HighCurve = 0.8;

    /// <inheritdoc/>
    internal override (int Width, int Height) Size(ChartWidth form) => form == ChartWidth.Wide ? (860, 400) : (360, 300);

    /// <inheritdoc/>
    private protected override void Draw(Plot plot, Palette colours, ChartWidth form)
    {
        bool wide = form == ChartWidth.Wide;
        PlotFrame.Clear(plot, colours);
        CurvePoint[] line = [.. Curve.Where(p => Across.Holds(p.X) && Upward.Holds(p.Y.Estimate))];
        CurvePoint[] all = [.. line, .. Apart.Where(p => Upward.Holds(p.Y.Estimate)), Marked];
        // Where next to nothing has a height to draw (a certain scenario fails at one distance) the axis is that of the whole curve.
        double[] places = [.. (line.Length > 1 ? all : all.Concat(Curve)).Select(p => p.X).Where(Across.Holds)];
        (double left, double right) = (Across.IsLog || !FromZero ? places.Min() : 0, places.Max());
        double high = Math.Max(all.Max(p => p.Y.High), 1e-12);
        double low = Upward.IsLog ? Lowest(all, high / 10) : 0;
        PlotFrame.Label(plot.Axes.Bottom, Across, left, right, wide ? 8 : 4);
        PlotFrame.Label(plot.Axes.Left, Upward, low, high, wide ? 8 : 6);
        (double width, double height) = (Across.Place(right) - Across.Place(left), Upward.Place(high) - Upward.Place(low));
        bool isHigh = Upward.Holds(Marked.Y.Estimate) && Upward.Place(Marked.Y.High) > Upward.Place(low) + (HighCurve * height);
        double top = Upward.Place(high) + ((isHigh ? LabelRoom : Headroom) * height);
        plot.Axes.SetLimits(
            Across.Place(left) - (Across.IsLog ? 0.02 * width : 0), Across.Place(right) + (0.02 * width),
            Upward.Place(low) - (Upward.IsLog ? 0.04 * height : 0), top);
        plot.Axes.Right.MinimumSize = 26;
        DrawBand(plot, colours, line, low);
        DrawApart(plot, colours, low);
        DrawMarked(plot, colours, low, top,
            isLabelLeft: Across.Place(Marked.X) - Across.Place(left) > (wide ? LeftEnd : NarrowLeftEnd) * width);
    }

    private static double Lowest(CurvePoint[] points, double atMost) =>
        points.SelectMany(p => new[] { p.Y.Low, p.Y.Estimate }).Where(y => y > 0).Append(atMost).Min();

    private void DrawBand(Plot plot, Palette colours, CurvePoint[] line, double low)
    {
        if (line.Length < 2)
        {
            return;
        }

        double[] x = [.. line.Select(p => Across.Place(p.X))];
        FillY band = plot.Add.FillY(x, [.. line.Select(p => Upward.Place(Math.Max(low, p.Y.Low)))],
            [.. line.Select(p => Upward.Place(p.Y.High))]);
        band.LineWidth = 0;
        band.FillColor = colours[Tone.Accent].WithAlpha(0.3);
        Scatter curve = plot.Add.ScatterLine(x, [.. line.Select(p => Upward.Place(p.Y.Estimate))]);
        curve.Color = colours[Tone.Accent];
        curve.LineWidth = 2.5f;
    }

    private void DrawApart(Plot plot, Palette colours, double low)
    {
        foreach (CurvePoint p in Apart.Where(p => Upward.Holds(p.Y.Estimate)))
        {
            double x = Across.Place(p.X);
            LinePlot range = plot.Add.Line(x, Upward.Place(Math.Max(low, p.Y.Low)), x, Upward.Place(p.Y.High));
            range.LineWidth = 2;
            range.LineColor = colours[Tone.Ink];
            Marker ring = plot.Add.Marker(x, Upward.Place(p.Y.Estimate), MarkerShape.OpenCircle, 9);
            ring.Color = colours[Tone.Second];
            ring.MarkerStyle.LineWidth = 2.5f;
        }
    }

    private void DrawMarked(Plot plot, Palette colours, double low, double top, bool isLabelLeft)
    {
        double x = Across.Place(Marked.X);
        double below = 0.07 * (top - Upward.Place(low));
        for (int i = 0; i < MarkedLabel.Length; i++)
        {
            string text = isLabelLeft ? MarkedLabel[i] + "  " : "  " + MarkedLabel[i];
            PlotFrame.Write(plot, colours, text, x, top - ((i + 0.3) * below), isLabelLeft ? Alignment.UpperRight : Alignment.UpperLeft);
        }

        LinePlot upright = plot.Add.Line(x, Upward.Place(low), x, top);
        upright.LineWidth = 1.5f;
        upright.LineColor = colours[Tone.Ink];
        if (Upward.Holds(Marked.Y.Estimate))
        {
            plot.Add.Marker(x, Upward.Place(Marked.Y.Estimate), MarkerShape.FilledCircle, 10, colours[Tone.Ink]);
        }
    }
}

/// <summary>A point of a curve with its interval.</summary>
/// <param name="X">Where it is.</param>
/// <param name="Y">Its height.</param>
public sealed record CurvePoint(double X, Interval Y);
