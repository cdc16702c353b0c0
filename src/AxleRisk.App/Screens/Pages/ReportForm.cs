using System.Globalization;
using AxleRisk.App.Screens.Forms;
using AxleRisk.Files;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Where a report is written and how many evaluations it may spend.</summary>
internal sealed class ReportForm : Form
{
    private const int FolderField = 0;
    private const int EvaluationsField = 1;

    /// <summary>Creates the form.</summary>
    /// <param name="folder">The folder proposed.</param>
    /// <param name="evaluations">The evaluations proposed.</param>
    public ReportForm(string folder, long evaluations)
    {
        Arrange(
        [
            new FormField("folder", folder),
            new FormField("evaluations", evaluations.ToString(CultureInfo.InvariantCulture)),
        ]);
        Changed(FolderField);
    }

    public override string Title => "Report";

    /// <summary>The folder; right where the form is.</summary>
    public string Folder => Fields[FolderField].Text.Trim();

    /// <summary>Evaluations of the risk study; right where the form is.</summary>
    public long Evaluations => EvaluationsQuestion.Number(Fields[EvaluationsField].Text) ?? 0;

    public override IReadOnlyList<PageLine> Picture(int width, int height) =>
        [.. Text.Wrap.Lines(
            "The folder is made, or replaced where it holds an earlier report with nothing changed in it. A name without / stands in the folder that the console was started in. "
            + "The evaluations are those of the risk study; the other studies have theirs in proportion.", width, "")
                .Select(l => PageLine.Of(l, Ink.Quiet))];

    protected override void Changed(int field)
    {
        Fields[FolderField].Refusal = FolderRefusal(Folder);
        Fields[EvaluationsField].Refusal = EvaluationsQuestion.Number(Fields[EvaluationsField].Text) is null
            ? EvaluationsQuestion.Needed : null;
    }

    private static string? FolderRefusal(string folder)
    {
        if (folder.Length == 0)
        {
            return "the name of a folder";
        }

        try
        {
            return WholeFolder.Refusal(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return e.Message;
        }
    }
}
