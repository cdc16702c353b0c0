using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The file is no longer what it was when it was read: what differs, and what to do about it.</summary>
internal static class Differences
{
    /// <summary>Lines shown; so many and the answers fit 24 rows.</summary>
    private const int MostLines = 12;

    private const int LineLength = 66;

    /// <summary>What to tell of the file as it was seen last; empty where it is the same.</summary>
    public static string Notice(EditedScenario edited) => edited.File.Disk switch
    {
        DiskState.Changed => "The file was changed by another program. R shows what differs.",
        DiskState.Gone => "The file is gone. R writes it again, or Ctrl+S.",
        DiskState.FolderGone => "The file is gone with its folder. S saves it elsewhere.",
        _ => "",
    };

    /// <summary>Shows what differs and asks what to do.</summary>
    /// <returns>What to tell the reader.</returns>
    public static string Ask(EditedScenario edited, IDialogs dialogs)
    {
        ScenarioFile file = edited.File;
        file.Look();
        switch (file.Disk)
        {
            case DiskState.FolderGone:
                return dialogs.Choose("File", $"{edited.Path} is gone with its folder.", "Not now", "Another name") == 1
                    ? Saving.SaveAs(edited, dialogs).Notice : "";
            case DiskState.Gone:
                string removed = $"{edited.Path} was removed since it was opened.";
                return dialogs.Choose("File", removed, "Not now", "Another name", "Write it again") switch
                {
                    1 => Saving.SaveAs(edited, dialogs).Notice,
                    2 => Saved(edited, edited.Save(overwrite: true)),
                    _ => "",
                };
            case DiskState.Same when !edited.IsUnsaved:
                return "The file is as it is here.";
            default:
                return edited.IsUnsaved ? AskOfBoth(edited, dialogs) : AskOfFile(edited, dialogs);
        }
    }

    private static string AskOfFile(EditedScenario edited, IDialogs dialogs) =>
        dialogs.Choose("Changed by another program", Text(edited), "Not now", "Read it again") == 1 ? Reload(edited) : "";

    private static string AskOfBoth(EditedScenario edited, IDialogs dialogs)
    {
        bool isChanged = edited.File.Disk == DiskState.Changed;
        string title = isChanged ? "Changed by another program" : "Not saved";
        switch (dialogs.Choose(title, Text(edited), "Write over", "Read again", "Keep both", "Other name", "Not now"))
        {
            case 0:
                return Saved(edited, edited.Save(overwrite: true));
            case 1:
                return Reload(edited);
            case 2:
                return edited.File.KeepAside(edited.Text, out string aside) is { } trouble
                    ? trouble : $"{Reload(edited)} Yours: {Path.GetFileName(aside)}.";
            case 3:
                return Saving.SaveAs(edited, dialogs).Notice;
            default:
                return "";
        }
    }

    private static string Text(EditedScenario edited)
    {
        string there;
        try
        {
            there = ScenarioText.Open(edited.Path).Text;
        }
        catch (ScenarioException e)
        {
            return e.Errors[0].ToString();
        }

        IReadOnlyList<DifferentLine> lines = LineDifference.Of(there, edited.Text);
        string head = $"{edited.Path}: lines of the file -, lines here +";
        IEnumerable<string> shown = lines.Take(MostLines)
            .Select(l => TextTable.Shorten($"{(l.IsSecond ? '+' : '-')}{l.Line,4} {Printable.Line(l.Text)}", LineLength));
        string rest = lines.Count > MostLines ? $"\n  and {lines.Count - MostLines} lines more" : "";
        return lines.Count == 0 ? $"{edited.Path} holds what stands here." : $"{head}\n{string.Join('\n', shown)}{rest}";
    }

    private static string Reload(EditedScenario edited)
    {
        try
        {
            edited.Reload();
            return "The file was read again; Ctrl+Z goes back.";
        }
        catch (ScenarioException e)
        {
            return e.Errors[0].ToString();
        }
    }

    private static string Saved(EditedScenario edited, SaveOutcome outcome) =>
        outcome.Result == SaveResult.Saved ? $"Saved {edited.Path}" : outcome.Reason;
}
