using System.Collections.Immutable;
using ScottPlot;
using ScottPlot.Plottables;

namespace AxleRisk.Reports.Charts;

/// <summary>A curve of a <see cref="PaperChart"/>.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Points">Its points, rising in x.</param>
public sealed record PaperCurve(string Name, ImmutableArray<CurvePoint> Points)
{
    /// <summary>Whether the intervals of its points are drawn as a band.</summary>
    public bool HasBand { get; init; }
}

/// <summary>Single points of a <see cref="PaperChart"/>, with their intervals where these have a length.</summary>
/// <param name="Name">What they are.</param>
/// <param name="Points">The points.</param>
public sealed record PaperPoints(string Name, ImmutableArray<CurvePoint> Points);

/// <summary>Several curves and the points that they are held against. The first curve is a full line, the second dashed, the third
/// dotted.</summary>
/// <param name="Curves">The curves, the most important first.</param>
/// <param name="Points">The points.</param>
/// <param name="Across">The axis below.</param>
/// <param name="Upward">The axis at the left.</param>
public sealed record PaperChart(
    ImmutableArray<PaperCurve> Curves, ImmutableArray<PaperPoints> Points, ChartAxis Across, ChartAxis Upward) : Chart
{
    private static readonly LinePattern[] Patterns = [LinePattern.Solid, LinePattern.Dashed, LinePattern.Dotted];

    /// <summary>Whether the axis at the left begins at 0.</summary>
    public bool FromZero { get; init; }

    /// <inheritdoc/>
    internal override (int Width, int Height) Size(ChartWidth form) => form == ChartWidth.Wide ? (860, 440) : (360, 320);

    /// <inheritdoc/>
    private protected override void Draw(Plot plot, Palette colours, ChartWidth form)
    {
        PlotFrame.Clear(plot, colours);
        CurvePoint[] all = [.. Curves.SelectMany(c => c.Points).Concat(Points.SelectMany(p => p.Points)).Where(IsHeld)];
        if (all.Length == 0)
        {
            return;
        }

        bool wide = form == ChartWidth.Wide;
        (double left, double right) = (all.Min(p => p.X), all.Max(p => p.X));
        double[] heights = [.. all.SelectMany(p => new[] { p.Y.Estimate, p.Y.Low, p.Y.High }).Where(Upward.Holds)];
        (double low, double high) = Upward.IsProbability ? ChartAxis.RangeOf(heights) : (FromZero ? 0 : heights.Min(), heights.Max());
        PlotFrame.Label(plot.Axes.Bottom, Across, left, right, wide ? 8 : 4);
        PlotFrame.Label(plot.Axes.Left, Upward, low, high, wide ? 8 : 6);
        double width = Math.Max(1e-12, Across.Place(right) - Across.Place(left)),
            height = Math.Max(1e-12, Upward.Place(high) - Upward.Place(low));
        plot.Axes.SetLimits(
            Across.Place(left) - (0.02 * width), Across.Place(right) + (0.02 * width),
            Upward.Place(low) - (FromZero ? 0 : 0.03 * height), Upward.Place(high) + (0.05 * height));
        plot.Axes.Right.MinimumSize = 26;
        for (int i = Curves.Length - 1; i >= 0; i--)
        {
            DrawCurve(plot, colours, Curves[i], i, low, high);
        }

        foreach (CurvePoint p in Points.SelectMany(p => p.Points).Where(IsHeld))
        {
            DrawPoint(plot, colours, p, low, high);
        }
    }

    private bool IsHeld(CurvePoint p) => Across.Holds(p.X) && Upward.Holds(p.Y.Estimate);

    private void DrawCurve(Plot plot, Palette colours, PaperCurve curve, int number, double low, double high)
    {
        CurvePoint[] line = [.. curve.Points.Where(IsHeld)];
        if (line.Length < 2)
        {
            return;
        }

        Tone tone = number == 0 ? Tone.Accent : number == 1 ? Tone.Second : Tone.Ink;
        double[] x = [.. line.Select(p => Across.Place(p.X))];
        if (curve.HasBand)
        {
            FillY band = plot.Add.FillY(
                x, [.. line.Select(p => Upward.Place(Math.Clamp(p.Y.Low, low, high)))],
                    [.. line.Select(p => Upward.Place(Math.Clamp(p.Y.High, low, high)))]);
            band.LineWidth = 0;
            band.FillColor = colours[tone].WithAlpha(0.25);
        }

        Scatter drawn = plot.Add.ScatterLine(x, [.. line.Select(p => Upward.Place(Math.Clamp(p.Y.Estimate, low, high)))]);
        drawn.Color = colours[tone];
        drawn.LineWidth = 2.5f;
        drawn.LinePattern = Patterns[Math.Min(number, Patterns.Length - 1)];
    }

    private void DrawPoint(Plot plot, Palette colours, CurvePoint p, double low, double high)
    {
        double x = Across.Place(p.X);
        if (p.Y.High > p.Y.Low)
        {
            LinePlot range = plot.Add.Line(x, Upward.Place(Math.Clamp(p.Y.Low, low, high)), x,
                Upward.Place(Math.Clamp(p.Y.High, low, high)));
            range.LineWidth = 1;
            range.LineColor = colours[Tone.Muted];
        }

        Marker ring = plot.Add.Marker(x, Upward.Place(Math.Clamp(p.Y.Estimate, low, high)), MarkerShape.OpenCircle, 7);
        ring.Color = colours[Tone.Ink];
        ring.MarkerStyle.LineWidth = 2;
    }
}
