using System.Collections.Immutable;
using ScottPlot;

namespace AxleRisk.Reports.Charts;

/// <summary>What a colour of a report is for.</summary>
public enum Tone
{
    /// <summary>What lies behind everything.</summary>
    Paper,

    /// <summary>Text.</summary>
    Ink,

    /// <summary>Axis labels and small print.</summary>
    Muted,

    /// <summary>Grid lines and rules.</summary>
    Line,

    /// <summary>What a chart is about.</summary>
    Accent,

    /// <summary>What it is compared with.</summary>
    Second,
}

/// <summary>
/// The colours of a report. Blue and ochre stay apart for all common kinds of colour blindness, and no chart tells
/// anything by colour alone: shapes and labels differ as well.
/// </summary>
public sealed class Palette
{
    private readonly ImmutableDictionary<Tone, string> colours;

    private Palette(params (Tone Tone, string Hex)[] colours) => this.colours = colours.ToImmutableDictionary(c => c.Tone, c => c.Hex);

    /// <summary>On light paper, and in print.</summary>
    public static Palette Light { get; } = new(
        (Tone.Paper, "#ffffff"), (Tone.Ink, "#1c2733"), (Tone.Muted, "#52606d"), (Tone.Line, "#ccd4db"),
        (Tone.Accent, "#1d5c8f"), (Tone.Second, "#a85a0a"));

    /// <summary>On a dark screen.</summary>
    public static Palette Dark { get; } = new(
        (Tone.Paper, "#12171c"), (Tone.Ink, "#e4e9ee"), (Tone.Muted, "#a3b0bc"), (Tone.Line, "#39444f"),
        (Tone.Accent, "#86bdec"), (Tone.Second, "#eda451"));

    /// <summary>
    /// Colours that stand for tones in a drawing whose real colours the reader's style decides: near black, unlike any
    /// other colour, and replaced before anybody sees them.
    /// </summary>
    internal static Palette Stand { get; } = new([.. Enum.GetValues<Tone>().Select(t => (t, $"#01010{(int)t + 1}"))]);

    /// <summary>A tone's colour as <c>#rrggbb</c>.</summary>
    public string Hex(Tone tone) => colours[tone];

    /// <summary>The name of a tone's variable in a style sheet.</summary>
    public static string Variable(Tone tone) => "--" + tone.ToString().ToLowerInvariant();

    /// <summary>The tone that a colour of <see cref="Stand"/> stands for; null for any other colour.</summary>
    internal static Tone? ToneOf(string colour) =>
        Stand.colours.Where(c => c.Value == colour).Select(c => (Tone?)c.Key).FirstOrDefault();

    internal Color this[Tone tone] => Color.FromHex(colours[tone]);
}
