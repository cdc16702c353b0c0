using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The questions when a scenario is opened: another console has it; an earlier one left changes.</summary>
internal static class Opening
{
    /// <summary>Tells of another console that has the file, or offers what an earlier one left.</summary>
    /// <returns>What to tell the reader.</returns>
    public static string Ask(EditedScenario edited, IDialogs dialogs) =>
        edited.File.Holder is not null ? OfferLook(edited, dialogs)
        : edited.File.Recovered is not null ? OfferRecovered(edited, dialogs)
        : "";

    private static string OfferLook(EditedScenario edited, IDialogs dialogs)
    {
        Files.Writing.OpenMark.Holder holder = edited.File.Holder!;
        string text = $"{edited.Path} is open in another console ({holder}). Here it can be looked at, or changed under another name.";
        if (holder.IsHere)
        {
            return dialogs.Choose("Open elsewhere", text, "Another name", "Only look") == 0 ? Saving.SaveAs(edited, dialogs).Notice : "";
        }

        // Whether it lives cannot be found out from here.
        text += " If that console is gone, take it over.";
        switch (dialogs.Choose("Open elsewhere", text, "Take it over", "Another name", "Only look"))
        {
            case 0:
                edited.File.Claim(evenIfHeld: true);
                return edited.File.Recovered is null ? "Taken over." : OfferRecovered(edited, dialogs);
            case 1:
                return Saving.SaveAs(edited, dialogs).Notice;
            default:
                return "";
        }
    }

    private static string OfferRecovered(EditedScenario edited, IDialogs dialogs)
    {
        string older = edited.File.Recovered is { IsOlder: true } ? " The file was written after them." : "";
        switch (dialogs.Choose("Changes found", $"An earlier session left changes that were not saved.{older}", "Discard them",
            "Set them aside", "Take them"))
        {
            case 0:
                edited.File.DropRecovered();
                return "The changes of the earlier session were discarded.";
            case 1:
                return edited.File.SetRecoveredAside(out string path) ?? $"They are in {Path.GetFileName(path)}, a scenario of its own.";
            case 2:
                edited.TakeRecovered();
                return "The changes of the earlier session were taken; Ctrl+Z takes them back.";
            default:
                return "";
        }
    }
}
