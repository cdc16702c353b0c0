using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>Saving, and the questions before something would be lost.</summary>
internal static class Saving
{
    /// <summary>Saves the open scenario; asks before another program's changes are written over.</summary>
    /// <returns>What to tell the reader, and whether it was saved.</returns>
    public static (string Notice, bool IsSaved) Save(Session session, IDialogs dialogs)
    {
        if (!session.Edited.IsUnsaved)
        {
            return ("Nothing to save: the file is as it is here.", true);
        }

        SaveOutcome outcome = session.Edited.Save();
        if (outcome.Result == SaveResult.WouldOverwrite
            && dialogs.Choose("Save", outcome.Reason + ".", "Do not save", "Write over it") == 1)
        {
            outcome = session.Edited.Save(overwrite: true);
        }

        return outcome.Result == SaveResult.Saved
            ? ($"Saved {session.Edited.Path}", true)
            : (outcome.Reason.Length > 0 ? outcome.Reason : "Not saved.", false);
    }

    /// <summary>Asks what is to become of changes not saved.</summary>
    /// <returns>Whether the scenario may be left, and what to tell the reader where it may not.</returns>
    public static (bool MayLeave, string Notice) BeforeLeaving(Session? session, IDialogs dialogs)
    {
        if (session is not { Edited.IsUnsaved: true })
        {
            return (true, "");
        }

        switch (dialogs.Choose("Not saved", $"{session.Edited.Path} has changes that are not saved.", "Stay", "Discard them", "Save"))
        {
            case 1:
                session.Edited.DropRecovered();
                return (true, "");
            case 2:
                (string notice, bool isSaved) = Save(session, dialogs);
                return (isSaved, notice);
            default:
                return (false, "");
        }
    }

    /// <summary>Offers changes that an earlier session left behind.</summary>
    /// <returns>What to tell the reader.</returns>
    public static string OfferRecovered(Session session, IDialogs dialogs)
    {
        if (session.Edited.Recovered is not { } found)
        {
            return "";
        }

        string older = found.IsOlder ? " The file was written after them." : "";
        switch (dialogs.Choose("Changes found", $"An earlier session left changes that were not saved.{older}", "Decide later",
            "Discard them", "Take them"))
        {
            case 1:
                session.Edited.DropRecovered();
                return "The changes of the earlier session were discarded.";
            case 2:
                session.TakeRecovered();
                return session.Edited.Errors is [var first, ..]
                    ? $"Taken, but not valid: {first.Message}. Ctrl+Z takes them back."
                    : "The changes of the earlier session were taken; Ctrl+Z takes them back.";
            default:
                return "";
        }
    }
}
