using System.Reflection;
using System.Text;
using AxleRisk.Reports.Charts;

namespace AxleRisk.Reports.Rendering;

/// <summary>The style of a report's page: our tones for light and dark screens and for print, then the rules.</summary>
internal static class Stylesheet
{
    public static string Text { get; } =
        $"""
        :root {Variables(Palette.Light)}
        @media screen and (prefers-color-scheme: dark) {"{"} :root {Variables(Palette.Dark)} {"}"}
        {Rules()}
        """;

    /// <summary>The rule that puts a title at the head of every printed page; all but letters and digits is escaped.</summary>
    public static string RunningHead(string title) =>
        $"@page {"{"} @top-left {"{"} content: \"{string.Concat(title.EnumerateRunes().Select(Escaped))}\"; font: 8pt sans-serif; {"}"} {"}"}\n";

    private static string Escaped(Rune rune) => Rune.IsLetterOrDigit(rune) || rune.Value == ' ' ? rune.ToString() : $"\\{rune.Value:x} ";

    private static string Variables(Palette palette) =>
        "{ " + string.Join(" ", Enum.GetValues<Tone>().Select(t => $"{Palette.Variable(t)}: {palette.Hex(t)};")) + " }";

    private static string Rules()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
