using System.Text;
using AxleRisk.App.Documents;
using AxleRisk.Files;
using AxleRisk.Reports.Content;
using AxleRisk.Reports.Rendering;

namespace AxleRisk.App.Sections;

/// <summary>
/// The files of a report: the page, the Markdown with its pictures, the tables, the JSON of every study, and the scenario with its
/// data files and the command that repeats it all.
/// </summary>
internal static class ReportFiles
{
    public const string Page = "report.html";
    public const string Markdown = "report.md";

    /// <summary>The file that holds the command which writes the report again.</summary>
    public const string Repeat = "repeat.txt";

    private const string Copied = "scenario";

    /// <summary>Puts a report together and writes its folder, whole or not at all.</summary>
    /// <exception cref="IOException">
    /// It cannot be written, the folder is refused, or the copy of the scenario in it does not read as the scenario did.
    /// </exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static Report Write(ReportStudies studies, string folder)
    {
        Report report = ReportComposer.Compose(studies);
        WholeFolder.Write(
            folder,
            [
                .. Of(report),
                .. ReportComposer.Documents(studies).Select(d => ($"json/{d.Name}.json", Text(() => Json.Write(d.Document) + "\n"))),
                .. studies.Document.Sources.Select(f => ($"{Copied}/{f.Name}", (Action<Stream>)(stream => stream.Write(f.Bytes.Span)))),
                (Repeat, Text(() => RepeatSection.Command(studies) + "\n")),
            ],
            written => RequireSame(studies.Document, written));
        return report;
    }

    public static IEnumerable<(string Name, Action<Stream> Write)> Of(Report report) =>
    [
        (Page, Text(() => HtmlRenderer.Render(report))),
        (Markdown, Text(() => MarkdownRenderer.Render(report))),
        .. report.Pictures.Select(p => (PictureFiles.PathOf(p), (Action<Stream>)(stream => stream.Write(p.Chart.Png())))),
        .. report.Files.Select(f => ($"tables/{f.Name}.csv",
            (Action<Stream>)(stream => TableFile.Write(stream, f.Header, f.Rows.Select(r => (IReadOnlyList<string>)r))))),
    ];

    /// <summary>The copy of the scenario in a report's folder, from there.</summary>
    public static string CopyOf(ScenarioDocument document) => $"{Copied}/{document.Sources[0].Name}";

    /// <summary>A report that says how to repeat it must be able to: the copy is read again, and is the same to the last byte.</summary>
    private static void RequireSame(ScenarioDocument document, string folder)
    {
        try
        {
            if (ScenarioReader.ReadFile(Path.Combine(folder, CopyOf(document))).Digest == document.Digest)
            {
                return;
            }
        }
        catch (ScenarioException)
        {
            // Read without fault a moment ago: what is wrong with it now is the copy.
        }

        throw new IOException($"the copy of the scenario, {CopyOf(document)}, does not read as the scenario did; the disk may be at fault");
    }

    private static Action<Stream> Text(Func<string> text) => stream => stream.Write(Encoding.UTF8.GetBytes(text()));
}
