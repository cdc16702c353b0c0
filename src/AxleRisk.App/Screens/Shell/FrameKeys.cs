using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The keys that work on every page.</summary>
internal static class FrameKeys
{
    /// <summary>Those that do something now, in the order they are shown.</summary>
    /// <param name="session">The open scenario; null where there is none.</param>
    /// <param name="pages">The number of pages.</param>
    public static IEnumerable<KeyHint> Of(Session? session, int pages)
    {
        if (pages > 0)
        {
            yield return new($"1-{PageBook.Keys[pages - 1]}", "pages", KeyWorth.Spare);
        }

        yield return new("?", "explain", KeyWorth.Always);
        if (session is { Edited: var edited })
        {
            if (edited.IsUnsaved)
            {
                yield return new("Ctrl+S", "save");
            }

            if (edited.UndoName is not null)
            {
                yield return new("Ctrl+Z", "undo", KeyWorth.Spare);
            }

            yield return new("o", "open", KeyWorth.Spare);
        }

        yield return new("q", "quit", KeyWorth.Always);
    }

    /// <summary>A key by its name, where the frame has a letter for it too.</summary>
    public static KeyName Named(PageKey key) => key switch
    {
        { Name: not KeyName.Character } => key.Name,
        { Character: '?' } => KeyName.Help,
        { Character: 'o' } => KeyName.Open,
        { Character: 'q' } => KeyName.Quit,
        _ => KeyName.Character,
    };
}
