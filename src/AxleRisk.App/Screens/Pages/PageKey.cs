namespace AxleRisk.App.Screens.Pages;

/// <summary>A key as a page sees it: a named key or a character.</summary>
/// <param name="Name">Which key; <see cref="KeyName.Character"/> for a character.</param>
/// <param name="Character">The character typed; 0 for a named key.</param>
internal readonly record struct PageKey(KeyName Name, char Character = '\0')
{
    public static implicit operator PageKey(char character) => new(KeyName.Character, character);

    public static implicit operator PageKey(KeyName name) => new(name);
}

/// <summary>The keys with a name.</summary>
internal enum KeyName
{
    Character,
    Up,
    Down,
    Left,
    Right,
    PageUp,
    PageDown,
    Home,
    End,
    Enter,
    Escape,
    Delete,
    Help,
    Open,
    Save,
    SaveAs,
    Compare,
    Pin,
    Tables,
    Plain,
    Undo,
    Redo,
    Quit,
}

/// <summary>A key that works now and what it does, for the bottom line.</summary>
/// <param name="Key">The key as it is written on keyboards: <c>r</c>, <c>Enter</c>.</param>
/// <param name="Does">What it does, in a word or two.</param>
/// <param name="Worth">How much would be missed where the line has no room for it.</param>
internal readonly record struct KeyHint(string Key, string Does, KeyWorth Worth = KeyWorth.Usual);

/// <summary>How much a key would be missed on a line that has not room for all, the most first.</summary>
internal enum KeyWorth
{
    /// <summary>The ways out of any doubt: the explanation, which names all other keys, and the end.</summary>
    Always,

    /// <summary>What the page is for: to run its study, and to stop it.</summary>
    Main,

    Usual,

    /// <summary>What is told elsewhere on the screen or seldom wanted.</summary>
    Spare,
}
