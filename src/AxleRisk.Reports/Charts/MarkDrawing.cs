using AxleRisk.Core.Numerics;
using ScottPlot;
using ScottPlot.Plottables;

namespace AxleRisk.Reports.Charts;

/// <summary>Draws one mark of a row.</summary>
internal static class MarkDrawing
{
    private const float DotSize = 9;

    public static void Draw(Plot plot, Palette colours, ChartAxis axis, ChartMark mark, double row, double half)
    {
        Interval at = mark.At;
        double x = axis.Place(at.Estimate);
        switch (mark.Shape)
        {
            case MarkShape.Bar:
                double origin = axis.IsLog ? plot.Axes.GetLimits().Left : 0;
                Rectangle bar = plot.Add.Rectangle(Math.Min(origin, x), Math.Max(origin, x), row - half, row + half);
                bar.FillColor = colours[Tone.Accent].WithAlpha(0.45);
                bar.LineWidth = 0;
                Line(plot, axis, at.Low, at.High, row, 2, colours[Tone.Ink]);
                break;
            case MarkShape.Stroke:
                LinePlot stroke = plot.Add.Line(x, row - half, x, row + half);
                stroke.LineWidth = 3;
                stroke.LineColor = colours[Tone.Second];
                break;
            case MarkShape.Link:
                Line(plot, axis, at.Low, at.High, row, 2, colours[Tone.Muted]);
                break;
            default:
                Line(plot, axis, at.Low, at.High, row, 2, colours[Tone.Ink]);
                bool open = mark.Shape == MarkShape.Ring;
                Marker dot = plot.Add.Marker(x, row, open ? ScottPlot.MarkerShape.OpenCircle : ScottPlot.MarkerShape.FilledCircle, DotSize);
                dot.Color = colours[open ? Tone.Second : Tone.Accent];
                dot.MarkerStyle.LineWidth = 2.5f;
                break;
        }
    }

    private static void Line(Plot plot, ChartAxis axis, double low, double high, double row, float width, Color colour)
    {
        if (!axis.Holds(high) || double.IsNaN(low))
        {
            return;
        }

        // An end that the axis has no place for (0 on a scale of ratios) lies at its beginning.
        double start = axis.Holds(low) ? axis.Place(low) : plot.Axes.GetLimits().Left;
        LinePlot line = plot.Add.Line(start, row, axis.Place(high), row);
        line.LineWidth = width;
        line.LineColor = colour;
    }
}
