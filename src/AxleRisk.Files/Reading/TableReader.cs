using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the keys of one table as its format describes them and rejects all others.</summary>
/// <param name="table">The table.</param>
/// <param name="path">Its name in messages: <c>vehicle</c>; empty for the top of the file.</param>
/// <param name="format">Its keys.</param>
/// <param name="errors">Where errors go.</param>
internal sealed class TableReader(TomlTable table, string path, TableFormat format, ErrorLog errors)
{
    private readonly HashSet<string> refused = [];

    public TomlTable Table => table;

    /// <summary>The name of a key in messages: <c>vehicle.sprung_kg</c>.</summary>
    public string NameOf(string key) => path.Length == 0 ? key : $"{path}.{key}";

    /// <summary>The entry of a key; null where it is absent.</summary>
    /// <exception cref="InvalidOperationException">The format has no such key.</exception>
    public TomlEntry? Find(string key) => table.Find(Described(key).Key);

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

    /// <summary>The entry of a key, which must be there if the format says so.</summary>
    public TomlEntry? Entry(string key) => Described(key).IsRequired ? Require(key) : Find(key);

    /// <summary>A number in its range; null where it is absent or wrong.</summary>
    public double? Number(string key) => Number(key, KindOf<KeyKind.Number>(key).Domain);

    /// <summary>A number in a domain; null where it is absent or wrong.</summary>
    public double? Number(string key, Domain domain) => Number(Entry(key), domain);

    /// <summary>A whole number in its range; null where it is absent or wrong.</summary>
    public long? Whole(string key)
    {
        KeyKind.Whole kind = KindOf<KeyKind.Whole>(key);
        if (Entry(key) is not TomlEntry entry)
        {
            return null;
        }

        if (entry.Node is TomlNumber { Number: double number } && number >= kind.Least && number <= kind.Most
            && number == Math.Floor(number))
        {
            return (long)number;
        }

        errors.Add(entry.Node.At, $"{NameOf(key)} must be {kind.MustBe}, not {entry.Node.Shown}");
        return null;
    }

    /// <summary>A text; null where it is absent or wrong.</summary>
    public string? Text(string key)
    {
        switch (Entry(key))
        {
            case null:
                return null;
            case { Node: TomlText { Text: string text } }:
                return text;
            case TomlEntry entry:
                errors.Add(entry.Node.At, $"{NameOf(key)} must be a text in quotes, not {entry.Node.Shown}");
                return null;
        }
    }

    /// <summary>Texts in brackets; none where they are absent or wrong.</summary>
    public ImmutableArray<string> Texts(string key, bool mustBe = false)
    {
        KeyKind.Texts kind = KindOf<KeyKind.Texts>(key);
        if ((mustBe ? Require(key) : Find(key)) is not TomlEntry entry)
        {
            return [];
        }

        if (entry.Node is TomlArray { Items: var items } && items.Count <= kind.Most && items.TrueForAll(i => i is TomlText))
        {
            return [.. items.Select(i => ((TomlText)i).Text)];
        }

        errors.Add(entry.Node.At, $"{NameOf(key)} must be {kind.MustBe} in brackets, not {entry.Node.Shown}");
        return [];
    }

    /// <summary>A text of one line; null where it is absent or wrong.</summary>
    public string? Line(string key)
    {
        KeyKind.Line kind = KindOf<KeyKind.Line>(key);
        if (Text(key) is string text && MessageText.LineFault(text, kind.Longest) is { } fault)
        {
            errors.Add(table.Find(key)!.Node.At, $"{NameOf(key)} must be {kind.MustBe}; {fault}");
            return null;
        }

        return (table.Find(key)?.Node as TomlText)?.Text;
    }

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

    /// <summary>One of the words of its kind; null where it is absent or wrong.</summary>
    public string? Choice(string key)
    {
        ImmutableArray<string> words = KindOf<KeyKind.Word>(key).Words;
        if (Text(key) is not string text || words.Contains(text))
        {
            return (Find(key)?.Node as TomlText)?.Text;
        }

        errors.Add(
            table.Find(key)!.Node.At,
            $"{NameOf(key)} must be {MessageText.List([.. words.Select(MessageText.Quote)], "or")}, not {MessageText.Quote(text)}");
        return null;
    }

    /// <summary>Numbers in brackets, each in the range of its kind; null where they are absent or wrong.</summary>
    public double[]? Numbers(string key)
    {
        KeyKind.Numbers kind = KindOf<KeyKind.Numbers>(key);
        if (Entry(key) is not TomlEntry entry)
        {
            return null;
        }

        if (entry.Node is TomlArray array && array.Items.Count >= kind.Least && array.Items.Count <= kind.Most
            && array.Items.TrueForAll(i => i is TomlNumber { Number: double number } && kind.Domain.Contains(number)))
        {
            return [.. array.Items.Cast<TomlNumber>().Select(i => i.Number)];
        }

        errors.Add(entry.Node.At, $"{NameOf(key)} must be {kind.MustBe}, not {entry.Node.Shown}");
        return null;
    }

    /// <summary>A table of its own; null where it is absent or wrong.</summary>
    public TableReader? Inner(string key)
    {
        TableFormat inner = KindOf<KeyKind.Table>(key).Of;
        switch (Find(key)?.Node)
        {
            case null:
                return null;
            case TomlTable node:
                return new TableReader(node, inner.Path, inner, errors);
            case TomlNode other:
                errors.Add(other.At, $"{inner.Path} must be one table under [{inner.Path}]");
                return null;
        }
    }

    /// <summary>A table of its own, as if it stood empty at a place.</summary>
    public TableReader Empty(string key, Position at)
    {
        TableFormat inner = KindOf<KeyKind.Table>(key).Of;
        return new TableReader(new TomlTable(at, TableOrigin.Implied), inner.Path, inner, errors);
    }

    /// <summary>Tables of one form; none where they are absent, null where they are wrong.</summary>
    public IReadOnlyList<TomlTable>? Inners(string key)
    {
        KeyKind.Tables kind = KindOf<KeyKind.Tables>(key);
        string inner = kind.Of.Path;
        if (Find(key) is not TomlEntry entry)
        {
            return [];
        }

        if (entry.Node is not TomlArray array || array.Items.Count < kind.Least || array.Items.Exists(i => i is not TomlTable))
        {
            errors.Add(entry.Node.At, $"{inner} must be tables, each under [[{inner}]]");
            return null;
        }

        if (array.Items.Count > kind.Most)
        {
            errors.Add(
                array.Items[kind.Most].At, $"there are {array.Items.Count} {kind.Called}; at most {kind.Most} are possible");
            return null;
        }

        return [.. array.Items.Cast<TomlTable>()];
    }

    /// <summary>An error for a key that the format does not have, where it stands: it is not called unknown as well.</summary>
    public void Refuse(string key, string message)
    {
        if (table.Find(key) is TomlEntry entry)
        {
            refused.Add(key);
            errors.Add(entry.KeyAt, message);
        }
    }

    /// <summary>Errors for all keys that the format does not have.</summary>
    /// <param name="also">Says of an unknown key what else is known of it; null where nothing is.</param>
    /// <returns>Whether there were none.</returns>
    public bool RejectUnknown(Func<string, string?>? also = null)
    {
        bool none = refused.Count == 0;
        foreach (TomlEntry entry in table.Entries.Where(e => format.Find(e.Key) is null && !refused.Contains(e.Key)))
        {
            string what = path.Length > 0 ? "key" : entry.Node is TomlTable or TomlArray { IsOfTables: true } ? "table" : "key";
            string where = path.Length > 0 ? $" in {path}" : "";
            string hint = also?.Invoke(entry.Key) ?? NearestName.Hint(entry.Key, [.. format.Keys.Select(k => k.Key)]);
            errors.Add(entry.KeyAt, $"unknown {what} {MessageText.Quote(entry.Key)}{where}{hint}");
            none = false;
        }

        return none;
    }

    private KeyFormat Described(string key) =>
        format.Find(key) ?? throw new InvalidOperationException($"the format of [{format.Path}] has no key {key}");

    private T KindOf<T>(string key)
        where T : KeyKind => (T)Described(key).Kind;

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
}
