using System.Text;
using AxleRisk.App.Documents;
using AxleRisk.Files;
using AxleRisk.Reports.Content;
using AxleRisk.Reports.Rendering;

namespace AxleRisk.App.Sections;

/// <summary>The files of a report: the page, the Markdown with its pictures, and the tables.</summary>
internal static class ReportFiles
{
    public const string Page = "report.html";
    public const string Markdown = "report.md";

    /// <summary>Puts a report together and writes its folder, whole or not at all.</summary>
    /// <exception cref="IOException">It cannot be written, or the folder is refused.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static Report Write(ReportStudies studies, string folder)
    {
        Report report = ReportComposer.Compose(studies);
        WholeFolder.Write(
            folder,
            [
                .. Of(report),
                .. studies.Made.Select((m, i) => ($"json/{ReportComposer.NameOf(studies, i)}.json",
                    (Action<Stream>)(stream => stream.Write(Encoding.UTF8.GetBytes(Json.Write(m.Document) + "\n"))))),
            ]);
        return report;
    }

    public static IEnumerable<(string Name, Action<Stream> Write)> Of(Report report) =>
    [
        (Page, stream => stream.Write(Encoding.UTF8.GetBytes(HtmlRenderer.Render(report)))),
        (Markdown, stream => stream.Write(Encoding.UTF8.GetBytes(MarkdownRenderer.Render(report)))),
        .. report.Pictures.Select(p => (PictureFiles.PathOf(p), (Action<Stream>)(stream => stream.Write(p.Chart.Png())))),
        .. report.Files.Select(f => ($"tables/{f.Name}.csv",
            (Action<Stream>)(stream => TableFile.Write(stream, f.Header, f.Rows.Select(r => (IReadOnlyList<string>)r))))),
    ];
}
