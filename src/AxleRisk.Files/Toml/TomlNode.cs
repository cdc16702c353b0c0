namespace AxleRisk.Files.Toml;

/// <summary>A value of a TOML document with its place in the text.</summary>
/// <param name="at">Where the value begins.</param>
/// <param name="shown">The value as an error message quotes it.</param>
internal abstract class TomlNode(Position at, string shown)
{
    public Position At => at;

    public string Shown => shown;
}

/// <summary>An integer or a float; may be infinite or NaN.</summary>
internal sealed class TomlNumber(Position at, string shown, double number) : TomlNode(at, shown)
{
    public double Number => number;
}

/// <summary>A string.</summary>
internal sealed class TomlText(Position at, string text) : TomlNode(at, MessageText.Quote(text))
{
    public string Text => text;
}

/// <summary>A boolean, a date or a time: never right in a scenario.</summary>
internal sealed class TomlOther(Position at, string shown) : TomlNode(at, shown);

/// <summary>An array, or an array of tables.</summary>
internal sealed class TomlArray(Position at, bool isOfTables) : TomlNode(at, "an array")
{
    public bool IsOfTables => isOfTables;

    public List<TomlNode> Items { get; } = [];
}
