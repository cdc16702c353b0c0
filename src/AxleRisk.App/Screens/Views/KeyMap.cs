using AxleRisk.App.Screens.Pages;
using Terminal.Gui.Input;

namespace AxleRisk.App.Screens.Views;

/// <summary>From the terminal's keys to those a page knows.</summary>
internal static class KeyMap
{
    private static readonly Dictionary<Key, KeyName> Named = new()
    {
        [Key.CursorUp] = KeyName.Up,
        [Key.CursorDown] = KeyName.Down,
        [Key.CursorLeft] = KeyName.Left,
        [Key.CursorRight] = KeyName.Right,
        [Key.PageUp] = KeyName.PageUp,
        [Key.PageDown] = KeyName.PageDown,
        [Key.Home] = KeyName.Home,
        [Key.End] = KeyName.End,
        [Key.Enter] = KeyName.Enter,
        [Key.Esc] = KeyName.Escape,
        [Key.Delete] = KeyName.Delete,
        [Key.F1] = KeyName.Help,
        [Key.O.WithCtrl] = KeyName.Open,
        [Key.S.WithCtrl] = KeyName.Save,
        [Key.Z.WithCtrl] = KeyName.Undo,
        [Key.Y.WithCtrl] = KeyName.Redo,
        [Key.Q.WithCtrl] = KeyName.Quit,
    };

    /// <summary>The page's key; null for one it does not know.</summary>
    public static PageKey? Of(Key key)
    {
        if (Named.TryGetValue(key, out KeyName name))
        {
            return name;
        }

        return !key.IsCtrl && !key.IsAlt && key.AsRune is { Value: >= ' ' and < 127 } rune ? (char)rune.Value : null;
    }
}
