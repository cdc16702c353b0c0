using ScottPlot;
using ScottPlot.TickGenerators;

namespace AxleRisk.Reports.Charts;

/// <summary>What all charts with axes have in common.</summary>
internal static class PlotFrame
{
    public const float FontSize = 13;

    /// <summary>Takes the frame away and sets text and grid in our tones.</summary>
    public static void Clear(Plot plot, Palette colours)
    {
        plot.Grid.MajorLineColor = colours[Tone.Line];
        foreach (IAxis axis in plot.Axes.GetAxes())
        {
            axis.FrameLineStyle.Width = 0;
            axis.MajorTickStyle.Length = axis.MinorTickStyle.Length = 0;
            axis.TickLabelStyle.FontName = axis.Label.FontName = ChartFont.Name;
            axis.TickLabelStyle.FontSize = axis.Label.FontSize = FontSize;
            axis.TickLabelStyle.ForeColor = colours[Tone.Ink];
            axis.Label.ForeColor = colours[Tone.Muted];
            axis.Label.Bold = false;
        }
    }

    /// <summary>Labels an axis with round numbers from <paramref name="low"/> to <paramref name="high"/>.</summary>
    public static void Label(IAxis axis, ChartAxis labels, double low, double high, int most)
    {
        IReadOnlyList<double> ticks = labels.Ticks(low, high, most);
        axis.TickGenerator = new NumericManual([.. ticks.Select(labels.Place)], [.. ticks.Select(labels.Label)]);
        axis.Label.Text = labels.Title;
    }

    /// <summary>A line of text inside the plot.</summary>
    public static void Write(Plot plot, Palette colours, string text, double x, double y, Alignment alignment)
    {
        ScottPlot.Plottables.Text label = plot.Add.Text(text, x, y);
        label.LabelFontName = ChartFont.Name;
        label.LabelFontSize = FontSize;
        label.LabelFontColor = colours[Tone.Ink];
        label.LabelBackgroundColor = colours[Tone.Paper];
        label.LabelAlignment = alignment;
    }
}
