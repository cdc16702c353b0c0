using AxleRisk.Files.Format;

namespace AxleRisk.Files.Writing;

/// <summary>Tables of a scenario added, changed and taken out as their description says: shares that add up to 1 make room.</summary>
public static class TableEdits
{
    /// <summary>A table at the end of a list.</summary>
    /// <param name="text">The scenario's text.</param>
    /// <param name="format">The table.</param>
    /// <param name="list">Where the list stands.</param>
    /// <param name="table">What the new one states.</param>
    public static ScenarioEdit Add(string text, TableFormat format, TomlPath list, TomlValue.Table table)
    {
        int place = Count(text, list);
        return new ScenarioEdit($"{list}: one more", [new TomlEdit.Append(list, table), .. RoomFor(text, format, list, place, table)]);
    }

    /// <summary>Other values of a table: those of keys that are not given are taken out, unless they are tables of their own.</summary>
    /// <param name="text">The scenario's text.</param>
    /// <param name="format">The table.</param>
    /// <param name="path">Where it stands, or is to stand.</param>
    /// <param name="table">What it is to state.</param>
    public static ScenarioEdit Change(string text, TableFormat format, TomlPath path, TomlValue.Table table)
    {
        var present = ScenarioEditor.Read(text, path) as TomlValue.Table;
        IEnumerable<TomlEdit> gone = format.Keys
            .Where(k => k.Kind is not (KeyKind.Table or KeyKind.Tables) && present?[k.Key] is not null && table[k.Key] is null)
            .Select(k => (TomlEdit)new TomlEdit.Remove(path.Then(k.Key)));
        IEnumerable<TomlEdit> stated = table.Items.Where(i => !i.Value.Equals(present?[i.Key]))
            .Select(i => (TomlEdit)new TomlEdit.Set(path.Then(i.Key), i.Value));
        IEnumerable<TomlEdit> room = path.Parts is [.., { Key: null, Index: var index }]
            ? RoomFor(text, format, path.Parent, index, table) : [];
        return new ScenarioEdit(path.ToString(), [.. gone, .. stated, .. room]);
    }

    /// <summary>A table of a list taken out.</summary>
    /// <param name="text">The scenario's text.</param>
    /// <param name="format">The table.</param>
    /// <param name="list">Where the list stands.</param>
    /// <param name="index">Its place in it, from 0.</param>
    public static ScenarioEdit Remove(string text, TableFormat format, TomlPath list, int index) =>
        new($"{list}: one less", [new TomlEdit.Remove(list.At(index)), .. Without(text, format, list, index)]);

    /// <summary>The number of tables in a list; 0 where there is none.</summary>
    public static int Count(string text, TomlPath list) => ScenarioEditor.Read(text, list) is TomlValue.List l ? l.Items.Length : 0;

    // The others keep their proportions and make room for the share of one.
    private static IEnumerable<TomlEdit> RoomFor(string text, TableFormat format, TomlPath list, int place, TomlValue.Table table)
    {
        if (Shared(format) is not { } key || table[key] is not TomlValue.Number { Value: > 0 and < 1 } share)
        {
            return [];
        }

        double[] shares = Of(text, list, key);
        double others = shares.Where((_, i) => i != place).Sum();
        if (!(others > 0) || (place < shares.Length && Math.Abs(shares[place] - share.Value) < 1e-12))
        {
            return [];
        }

        double[] scaled = [.. shares.Select(s => s / others * (1 - share.Value))];
        return Written(list, key, place < scaled.Length
            ? [.. scaled.Select((s, i) => i == place ? share.Value : s)] : [.. scaled, share.Value]);
    }

    private static IEnumerable<TomlEdit> Without(string text, TableFormat format, TomlPath list, int index)
    {
        if (Shared(format) is not { } key)
        {
            return [];
        }

        double[] left = [.. Of(text, list, key).Where((_, i) => i != index)];
        return left.Sum() > 0 ? Written(list, key, left) : [];
    }

    private static string? Shared(TableFormat format) => format.Keys.FirstOrDefault(k => k.SumsToOne)?.Key;

    private static double[] Of(string text, TomlPath list, string key) => ScenarioEditor.Read(text, list) is TomlValue.List tables
        ? [.. tables.Items.Select(t => (t as TomlValue.Table)?[key] is TomlValue.Number n ? n.Value : 0)] : [];

    private static IEnumerable<TomlEdit> Written(TomlPath list, string key, double[] shares) =>
        Shares.Exactly(shares).Select((s, i) => new TomlEdit.Set(list.At(i).Then(key), Shares.ToValue(s)));
}
