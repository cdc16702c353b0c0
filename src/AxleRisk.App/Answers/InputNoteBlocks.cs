using AxleRisk.App.Text;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>Where the values of the inputs come from, as the file's comments say it.</summary>
internal static class InputNoteBlocks
{
    /// <summary>What stands over the list; it holds the author's own words.</summary>
    public const string Heading = "Notes and sources, as they stand in the file";

    /// <summary>A list of the inputs that have a note; nothing where none has.</summary>
    public static IEnumerable<Block> Of(ScenarioDocument document)
    {
        string[] notes =
        [
            .. InputNotes.Of(document).Select(n => $"{document.Scenario.LabelOf(n.Input.Name)}: {Printable.Line(n.Note)}"),
        ];
        return notes.Length == 0 ? [] : [new Subheading(Heading), new ItemList([.. notes])];
    }
}
