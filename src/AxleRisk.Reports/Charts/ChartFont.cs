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

    /// <summary>
    /// A text no wider than <paramref name="width"/>: its middle is left out, for a factor's name tells the leg first and the
    /// quantity last.
    /// </summary>
    public static string Fit(string text, float size, double width)
    {
        string fit = text;
        for (int kept = text.Length - 1; kept > 2 && Width(fit, size) > width; kept--)
        {
            fit = string.Concat(text.AsSpan(0, kept / 2), "..", text.AsSpan(text.Length - (kept - (kept / 2))));
        }

        return fit;
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
