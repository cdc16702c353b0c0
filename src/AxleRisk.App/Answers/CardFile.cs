using System.Text;
using AxleRisk.App.Commands;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Files;
using AxleRisk.Reports.Content;
using AxleRisk.Reports.Rendering;

namespace AxleRisk.App.Answers;

/// <summary>The crew's card for print: one page of HTML, and the same as text beside it.</summary>
internal static class CardFile
{
    /// <summary>Writes both.</summary>
    /// <returns>Why one could not be written, as a sentence; null where both were.</returns>
    public static string? Write(string path, ScenarioDocument document, TripResult result)
    {
        Block[] blocks =
        [
            .. CardBlocks.Card(result),
            new Paragraph($"{document.FileName}, digest {document.Digest[..12]}, seed {result.Run.Seed}, {Product.Name} {Product.Version}."),
            new Warning(Caution.Sentence),
        ];
        string title = Printable.Line(document.Scenario.Title);
        string page = HtmlRenderer.Render(Report.Of(title, [new Section(CardText.Heading, [.. blocks])], []));
        string text = string.Join('\n', [title, "", .. BlockLines.Of(blocks).Select(l => l.Text), ""]);
        return OutputFile.Trouble(path, p => WholeFile.Write(p, Encoding.UTF8.GetBytes(page)))
            ?? OutputFile.Trouble(TextPath(path), p => WholeFile.Write(p, Encoding.UTF8.GetBytes(text)));
    }

    /// <summary>Where the text goes: the same name with .txt.</summary>
    public static string TextPath(string path) => Path.ChangeExtension(path, Path.GetExtension(path) == ".txt" ? ".card.txt" : ".txt");
}
