using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The keys that work on every page.</summary>
internal static class FrameKeys
{
    /// <summary>Those that do something now, in the order they are shown.</summary>
    /// <param name="edited">The open scenario; null where there is none.</param>
    /// <param name="pages">The number of pages.</param>
    public static IEnumerable<KeyHint> Of(EditedScenario? edited, int pages)
    {
        if (pages > 0)
        {
            yield return new($"1 to {PageBook.Keys[pages - 1]}", "pages", KeyWorth.Spare);
        }

        yield return new("?", "explain", KeyWorth.Always);
        if (edited is not null)
        {
            if (edited.File.Disk is not DiskState.Same)
            {
                yield return new("R", "what differs", KeyWorth.Main);
            }

            if (edited.File.Holder is not null)
            {
                yield return new("S", "save as", KeyWorth.Main);
            }

            if (edited.IsUnsaved)
            {
                yield return new("Ctrl+S", "save");
            }

            if (edited.UndoName is not null)
            {
                yield return new("Ctrl+Z", "undo", KeyWorth.Spare);
            }

            yield return new("o", "open", KeyWorth.Spare);
            if (pages > 0)
            {
                yield return new("t", "tables", KeyWorth.Spare);
                yield return new("b", "before and after", KeyWorth.Spare);
            }
        }

        yield return new("#", Characters.ArePlain ? "all characters" : "plain characters", KeyWorth.Spare);
        yield return new("q", "quit", KeyWorth.Always);
    }

    /// <summary>A key by its name, where the frame has a letter for it too.</summary>
    public static KeyName Named(PageKey key) => key switch
    {
        { Name: not KeyName.Character } => key.Name,
        { Character: '?' } => KeyName.Help,
        { Character: 'o' } => KeyName.Open,
        { Character: 'q' } => KeyName.Quit,
        { Character: 'S' } => KeyName.SaveAs,
        { Character: 'R' } => KeyName.Compare,
        { Character: 'b' } => KeyName.Pin,
        { Character: 't' } => KeyName.Tables,
        { Character: '#' } => KeyName.Plain,
        _ => KeyName.Character,
    };
}
