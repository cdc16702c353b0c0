using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Toml;

/// <summary>Reads the keys of one table and, at the end, rejects those nobody asked for.</summary>
/// <param name="table">The table.</param>
/// <param name="path">Its name in messages: <c>vehicle</c>; empty for the top of the file.</param>
/// <param name="errors">Where errors go.</param>
internal sealed class TableReader(TomlTable table, string path, ErrorLog errors)
{
    private readonly List<string> known = [];

    public TomlTable Table => table;

    /// <summary>The name of a key in messages: <c>vehicle.sprung_kg</c>.</summary>
    public string NameOf(string key) => path.Length == 0 ? key : $"{path}.{key}";

    /// <summary>The entry of a key, which is known from now on.</summary>
    public TomlEntry? Find(string key)
    {
        if (!known.Contains(key))
        {
            known.Add(key);
        }

        return table.Find(key);
    }

    /// <summary>The entry of a key that must be there.</summary>
    public TomlEntry? Require(string key)
    {
        TomlEntry? entry = Find(key);
        if (entry is null)
        {
            errors.Add(table.At, $"{NameOf(key)} is missing");
        }

        return entry;
    }

    /// <summary>A number in a domain; null where it is absent or wrong.</summary>
    public double? Number(string key, Domain domain) => Number(Find(key), domain);

    /// <summary>A number in a domain that must be there; null where it is absent or wrong.</summary>
    public double? RequiredNumber(string key, Domain domain) => Number(Require(key), domain);

    /// <summary>A text; null where it is absent or wrong.</summary>
    public string? Text(string key) => Text(Find(key));

    /// <summary>A text that must be there; null where it is absent or wrong.</summary>
    public string? RequiredText(string key) => Text(Require(key));

    /// <summary>One of a few words; null where it is absent or wrong.</summary>
    public T? Word<T>(string key, IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        if (Text(key) is not string text)
        {
            return null;
        }

        if (words.TryGetValue(text, out T found))
        {
            return found;
        }

        errors.Add(
            table.Find(key)!.Node.At,
            $"{NameOf(key)} must be {MessageText.List([.. words.Keys.Select(MessageText.Quote)], "or")}, not {MessageText.Quote(text)}");
        return null;
    }

    /// <summary>Errors for all keys not asked for so far.</summary>
    /// <param name="also">Says of an unknown key what else is known of it; null where nothing is.</param>
    /// <returns>Whether there were none.</returns>
    public bool RejectUnknown(Func<string, string?>? also = null)
    {
        bool none = true;
        foreach (TomlEntry entry in table.Entries.Where(e => !known.Contains(e.Key)))
        {
            string what = path.Length > 0 ? "key" : entry.Node is TomlTable or TomlArray { IsOfTables: true } ? "table" : "key";
            string where = path.Length > 0 ? $" in {path}" : "";
            string hint = also?.Invoke(entry.Key) ?? NearestName.Hint(entry.Key, known);
            errors.Add(entry.KeyAt, $"unknown {what} {MessageText.Quote(entry.Key)}{where}{hint}");
            none = false;
        }

        return none;
    }

    private double? Number(TomlEntry? entry, Domain domain)
    {
        if (entry is null)
        {
            return null;
        }

        if (entry.Node is TomlNumber { Number: double number } && domain.Contains(number))
        {
            return number;
        }

        errors.Add(entry.Node.At, $"{NameOf(entry.Key)} must be {domain.Describe()}, not {entry.Node.Shown}");
        return null;
    }

    private string? Text(TomlEntry? entry)
    {
        if (entry is null)
        {
            return null;
        }

        if (entry.Node is TomlText { Text: string text })
        {
            return text;
        }

        errors.Add(entry.Node.At, $"{NameOf(entry.Key)} must be a text in quotes, not {entry.Node.Shown}");
        return null;
    }
}
