using System.Collections.Immutable;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace AxleRisk.Reports.Charts;

/// <summary>Rows of marks over one axis: a name, what is measured, its figure.</summary>
/// <param name="Rows">The rows, the first on top.</param>
/// <param name="Axis">The axis below.</param>
/// <param name="Reference">A value that all rows are compared with: an upright line; null for none.</param>
public sealed record RowsChart(ImmutableArray<ChartRow> Rows, ChartAxis Axis, double? Reference = null) : Chart
{
    private const double Margin = 0.04;

    /// <summary>The room for a label beside the wide plot, in pixels.</summary>
    private const float MostLabel = 290;

    /// <inheritdoc/>
    internal override (int Width, int Height) Size(ChartWidth form) => form == ChartWidth.Wide
        ? (860, 70 + (28 * Rows.Length))
        : (360, 70 + (46 * Rows.Length));

    /// <inheritdoc/>
    private protected override void Draw(Plot plot, Palette colours, ChartWidth form)
    {
        bool wide = form == ChartWidth.Wide;
        PlotFrame.Clear(plot, colours);
        (double low, double high) = Range();
        PlotFrame.Label(plot.Axes.Bottom, Axis, low, high, wide ? 8 : 5);
        double start = Axis.Place(low);
        double room = (Axis.Place(high) - start) * Margin;
        (double left, double right) = (start - room, Axis.Place(high) + room);
        plot.Axes.SetLimits(left, right, -Rows.Length + 0.4, 0.6);
        plot.Grid.YAxisStyle.IsVisible = false;
        // Before the names, which are written over it where there is little room.
        if (Reference is { } reference && Axis.Holds(reference))
        {
            plot.Add.VerticalLine(Axis.Place(reference), 1, colours[Tone.Ink]);
        }

        if (wide)
        {
            NameAtTheSides(plot);
        }
        else
        {
            NameAbove(plot, colours, left, right);
        }

        double down = wide ? 0 : 0.2;
        for (int i = 0; i < Rows.Length; i++)
        {
            foreach (ChartMark mark in Rows[i].Marks.Where(m => Axis.Holds(m.At.Estimate)))
            {
                MarkDrawing.Draw(plot, colours, Axis, mark, -i - down, wide ? 0.34 : 0.17);
            }
        }
    }

    private void NameAtTheSides(Plot plot)
    {
        double[] places = [.. Enumerable.Range(0, Rows.Length).Select(i => (double)-i)];
        plot.Axes.Left.TickGenerator = new NumericManual(places,
            [.. Rows.Select(r => ChartFont.Fit(r.Label, PlotFrame.FontSize, MostLabel))]);
        plot.Axes.Right.TickGenerator = new NumericManual(places, [.. Rows.Select(r => r.Value)]);
        plot.Axes.SetLimitsY(plot.Axes.Left.Min, plot.Axes.Left.Max, plot.Axes.Right);
        plot.Layout.Fixed(new PixelPadding(Math.Min(SideOf(r => r.Label), MostLabel + 14), SideOf(r => r.Value), 50, 8));
    }

    private void NameAbove(Plot plot, Palette colours, double left, double right)
    {
        plot.Axes.Left.TickGenerator = plot.Axes.Right.TickGenerator = new NumericManual([], []);
        for (int i = 0; i < Rows.Length; i++)
        {
            float room = Size(ChartWidth.Narrow).Width - 20 - ChartFont.Width(Rows[i].Value, PlotFrame.FontSize);
            PlotFrame.Write(plot, colours, ChartFont.Fit(Rows[i].Label, PlotFrame.FontSize, room), left, -i + 0.05, Alignment.LowerLeft);
            PlotFrame.Write(plot, colours, Rows[i].Value, right, -i + 0.05, Alignment.LowerRight);
        }

        plot.Layout.Fixed(new PixelPadding(2, 2, 50, 8));
    }

    private float SideOf(Func<ChartRow, string> text) =>
        Rows.Select(r => ChartFont.Width(text(r), PlotFrame.FontSize)).Append(0).Max() + 14;

    /// <summary>The ends of the axis: a linear one begins at 0, or below where a mark does.</summary>
    private (double Low, double High) Range()
    {
        double[] values =
        [
            .. Rows.SelectMany(r => r.Marks).SelectMany(m => new[] { m.At.Estimate, m.At.Low, m.At.High }).Append(Reference ?? double.NaN)
                .Where(Axis.Holds),
        ];
        (double low, double high) = values.Length == 0 ? (1, 1) : (values.Min(), values.Max());
        return Axis.IsLog
            ? (high / low < 1.05 ? (low / 1.1, high * 1.1) : (low, high))
            : (Math.Min(0, low), high > 0 ? high : 1);
    }
}
