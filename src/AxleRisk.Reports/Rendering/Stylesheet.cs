using System.Reflection;
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

    private static string Variables(Palette palette) =>
        "{ " + string.Join(" ", Enum.GetValues<Tone>().Select(t => $"{Palette.Variable(t)}: {palette.Hex(t)};")) + " }";

    private static string Rules()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
