using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>Saving, and the questions before something would be lost.</summary>
internal static class Saving
{
    private const string No = "Do not save", OtherName = "Another name";

    /// <summary>Saves; where something stands against it, asks what to do.</summary>
    /// <returns>What to tell the reader, and whether it was saved.</returns>
    public static (string Notice, bool IsSaved) Save(EditedScenario edited, IDialogs dialogs)
    {
        if (!edited.IsUnsaved)
        {
            edited.File.Look();
            return edited.File.Disk == Files.Writing.DiskState.Same
                ? ("Nothing to save: the file is as it is here.", true) : (Differences.Ask(edited, dialogs), true);
        }

        SaveOutcome outcome = edited.Save();
        switch (outcome.Result)
        {
            case SaveResult.Saved:
                return ($"Saved {edited.Path}", true);
            case SaveResult.WouldOverwrite:
                return (Differences.Ask(edited, dialogs), !edited.IsUnsaved);
            case SaveResult.Protected:
                return dialogs.Choose("Save", outcome.Reason + ".", "Write over it", No, OtherName) switch
                {
                    0 => Told(edited, edited.Save(unprotect: true)),
                    2 => SaveAs(edited, dialogs),
                    _ => ("Not saved.", false),
                };
            case SaveResult.Gone:
                return dialogs.Choose("Save", outcome.Reason + ".", No, OtherName, "Write it again") switch
                {
                    1 => SaveAs(edited, dialogs),
                    2 => Told(edited, edited.Save(overwrite: true)),
                    _ => ("Not saved.", false),
                };
            default:
                return dialogs.Choose("Not saved", outcome.Reason + ".", No, OtherName) == 1
                    ? SaveAs(edited, dialogs) : ("Not saved.", false);
        }
    }

    /// <summary>Saves under another name that the reader gives.</summary>
    public static (string Notice, bool IsSaved) SaveAs(EditedScenario edited, IDialogs dialogs)
    {
        if (dialogs.Ask("Save under another name", "Path of the file; it is the one under edit from then on:", edited.Path, WhyNotTo)
            is not { } path)
        {
            return ("Not saved.", false);
        }

        SaveOutcome outcome = edited.SaveAs(path);
        if (outcome.Result == SaveResult.WouldOverwrite && path != edited.Path)
        {
            if (dialogs.Choose("Save under another name", outcome.Reason + ".", "Write over it", No) != 0)
            {
                return ("Not saved.", false);
            }

            outcome = edited.SaveAs(path, overwrite: true);
        }

        return Told(edited, outcome);
    }

    /// <summary>Asks what is to become of changes not saved.</summary>
    /// <returns>Whether the scenario may be left, and what to tell the reader where it may not.</returns>
    public static (bool MayLeave, string Notice) BeforeLeaving(EditedScenario? edited, IDialogs dialogs)
    {
        if (edited is not { IsUnsaved: true })
        {
            return (true, "");
        }

        switch (dialogs.Choose("Not saved", $"{edited.Path} has changes that are not saved.", "Discard them", "Stay", "Save"))
        {
            case 0:
                edited.File.DropKept();
                return (true, "");
            case 2:
                (string notice, bool isSaved) = Save(edited, dialogs);
                return (isSaved, notice);
            default:
                return (false, "");
        }
    }

    private static string? WhyNotTo(string path) =>
        path.Length == 0 ? "a path such as mine.toml"
        : Directory.Exists(path) ? "that is a folder"
        : Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder && !Directory.Exists(folder) ? $"there is no folder {folder}"
        : null;

    private static (string Notice, bool IsSaved) Told(EditedScenario edited, SaveOutcome outcome) => outcome.Result == SaveResult.Saved
        ? ($"Saved {edited.Path}", true) : (outcome.Reason.Length > 0 ? outcome.Reason : "Not saved.", false);
}
