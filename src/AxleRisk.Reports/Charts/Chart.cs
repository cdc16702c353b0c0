using System.Xml.Linq;
using ScottPlot;

namespace AxleRisk.Reports.Charts;

/// <summary>The width that a chart is drawn for.</summary>
public enum ChartWidth
{
    /// <summary>A page or a screen.</summary>
    Wide,

    /// <summary>A telephone held upright.</summary>
    Narrow,
}

/// <summary>A picture of figures. What it shows are its properties; the same properties give the same bytes.</summary>
public abstract record Chart
{
    /// <summary>Pixels of the picture file for one of the chart.</summary>
    private const int Sharpness = 2;

    /// <summary>Whether a narrow drawing differs from the wide one in more than its size.</summary>
    public virtual bool HasNarrowForm => true;

    /// <summary>The chart as PNG, on light paper.</summary>
    public byte[] Png()
    {
        (int width, int height) = Size(ChartWidth.Wide);
        Plot plot = Drawn(Palette.Light, ChartWidth.Wide);
        plot.FigureBackground.Color = Palette.Light[Tone.Paper];
        plot.ScaleFactor = Sharpness;
        return plot.GetImage(Sharpness * width, Sharpness * height).GetImageBytes(ImageFormat.Png, 100);
    }

    /// <summary>
    /// The chart as an SVG element for a page of HTML: its colours are the page's, its identifiers begin with
    /// <paramref name="prefix"/>.
    /// </summary>
    public XElement Svg(ChartWidth form, string prefix)
    {
        (int width, int height) = Size(form);
        return SvgPicture.ForPage(Drawn(Palette.Stand, form).GetSvgXml(width, height), width, height, prefix);
    }

    /// <summary>The size in pixels of the screen.</summary>
    internal abstract (int Width, int Height) Size(ChartWidth form);

    /// <summary>Draws on an empty plot whose background is clear.</summary>
    private protected abstract void Draw(Plot plot, Palette colours, ChartWidth form);

    private Plot Drawn(Palette colours, ChartWidth form)
    {
        ChartFont.Register();
        var plot = new Plot();
        plot.Font.Set(ChartFont.Name);
        plot.FigureBackground.Color = plot.DataBackground.Color = Colors.Transparent;
        Draw(plot, colours, form);
        return plot;
    }
}
