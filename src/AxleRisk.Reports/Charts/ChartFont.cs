using System.Reflection;
using ScottPlot;
using SkiaSharp;

namespace AxleRisk.Reports.Charts;

/// <summary>The font of all charts: carried along, so that a machine without fonts draws the same picture as any other.</summary>
internal sealed class ChartFont : IFontResolver
{
    /// <summary>The name that charts ask for; no system font has it.</summary>
    public const string Name = "AxleRisk Sans";

    private static readonly SKTypeface Typeface = Load();
    private static readonly Lazy<bool> Registered = new(Announce);

    private ChartFont()
    {
    }

    /// <summary>Makes the font known to the drawing library, once; thread-safe.</summary>
    public static void Register() => _ = Registered.Value;

    /// <summary>The width of a line of text, in pixels.</summary>
    /// <param name="text">The text.</param>
    /// <param name="size">The size of the font in pixels.</param>
    public static float Width(string text, float size)
    {
        using var font = new SKFont(Typeface, size);
        return font.MeasureText(text);
    }

    public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        fontName == Name ? Typeface : null;

    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => fontName == Name ? Typeface : null;

    private static SKTypeface Load()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("DejaVuSans.ttf")!;
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }

    private static bool Announce()
    {
        Fonts.FontResolvers.Insert(0, new ChartFont());
        Fonts.Default = Name;
        return true;
    }
}
