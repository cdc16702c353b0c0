namespace AxleRisk.Files.Toml;

/// <summary>How a table came to be, which decides who may add to it.</summary>
internal enum TableOrigin
{
    /// <summary>Named on the way to another header's table; may still get a header of its own.</summary>
    Implied,

    /// <summary>Under its own header, or the top of the file.</summary>
    Header,

    /// <summary>Behind dotted keys, which may add to it.</summary>
    Dotted,

    /// <summary>Inline in braces: complete as it stands.</summary>
    Inline,
}

/// <summary>A table, whether it stands under a header, inline or behind dotted keys.</summary>
internal sealed class TomlTable(Position at, TableOrigin origin) : TomlNode(at, "a table")
{
    private readonly Dictionary<string, TomlEntry> entries = [];

    public TableOrigin Origin => origin;

    /// <summary>The entries in file order.</summary>
    public IEnumerable<TomlEntry> Entries => entries.Values;

    public TomlEntry? Find(string key) => entries.GetValueOrDefault(key);

    /// <summary>Adds an entry under a key that is free.</summary>
    public void Add(TomlEntry entry) => entries.Add(entry.Key, entry);

    /// <summary>Replaces a table that was only implied by one under its header, with what it holds so far.</summary>
    public TomlTable GiveHeader(string key, Position headerAt)
    {
        TomlTable implied = (TomlTable)entries[key].Node;
        TomlTable headed = new(headerAt, TableOrigin.Header);
        foreach (TomlEntry entry in implied.Entries)
        {
            headed.Add(entry);
        }

        entries[key] = new TomlEntry(key, headerAt, headed);
        return headed;
    }
}

/// <summary>A key of a table, where it stands, and its value.</summary>
internal sealed record TomlEntry(string Key, Position KeyAt, TomlNode Node);
