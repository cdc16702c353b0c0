using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>One table of the scenario, or a list of tables, in the list of them.</summary>
/// <param name="Format">The table, or what each of the list is.</param>
/// <param name="Path">Where it stands, or is to stand.</param>
/// <param name="Depth">How deep it is inside others.</param>
/// <param name="Label">Its name.</param>
/// <param name="Summary">What it states, short; empty where it is not there.</param>
internal sealed record TableRow(TableFormat Format, TomlPath Path, int Depth, string Label, string Summary)
{
    /// <summary>The list it heads or stands in; null for a table of its own.</summary>
    public KeyKind.Tables? List { get; init; }

    /// <summary>Its place in the list, from 0; null for the head of a list or a table of its own.</summary>
    public int? Index { get; init; }

    /// <summary>Whether the scenario states it.</summary>
    public bool IsStated { get; init; }

    /// <summary>Where its list stands.</summary>
    public TomlPath ListPath => Index is null ? Path : Path.Parent;

    /// <summary>All tables of a scenario in the order of the format, those not stated too.</summary>
    /// <param name="scenario">The scenario, for the names of inputs.</param>
    /// <param name="text">Its text.</param>
    public static IReadOnlyList<TableRow> Of(Scenario scenario, string text) =>
        [.. Inside(scenario, ScenarioFormat.Top, TomlPath.Root, ScenarioEditor.Read(text, TomlPath.Root), 0)];

    private static IEnumerable<TableRow> Inside(Scenario scenario, TableFormat table, TomlPath path, TomlValue? value, int depth)
    {
        foreach (KeyFormat key in table.Keys)
        {
            // The top names its tables by their paths.
            string name = key.Key[(key.Key.LastIndexOf('.') + 1)..];
            TomlPath at = path.Then(name);
            TomlValue? stated = (value as TomlValue.Table)?[name];
            switch (key.Kind)
            {
                case KeyKind.Table one:
                    yield return new TableRow(one.Of, at, depth, key.Label, Short(scenario, one.Of, stated))
                    { IsStated = stated is not null };
                    foreach (TableRow row in Inside(scenario, one.Of, at, stated, depth + 1))
                    {
                        yield return row;
                    }

                    break;
                case KeyKind.Tables many:
                    TomlValue[] items = stated is TomlValue.List list ? [.. list.Items] : [];
                    yield return new TableRow(many.Of, at, depth, many.Called, items.Length == 0 ? "" : $"{items.Length}")
                    { List = many, IsStated = items.Length > 0 };
                    for (int i = 0; i < items.Length; i++)
                    {
                        (string label, string summary) = Element(scenario, many.Of, items[i], i);
                        yield return new TableRow(many.Of, at.At(i), depth + 1, label, summary) { List = many, Index = i, IsStated = true };
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private static (string Label, string Summary) Element(Scenario scenario, TableFormat format, TomlValue item, int index)
    {
        KeyFormat first = format.Keys[0];
        string label = item is TomlValue.Table table && table[first.Key] is { } value ? Value(scenario, first, value) : $"{index + 1}";
        return (label, Short(scenario, format with { Keys = format.Keys.RemoveAt(0) }, item));
    }

    private static string Short(Scenario scenario, TableFormat format, TomlValue? value) => value is not TomlValue.Table table ? ""
        : string.Join(", ", format.Keys.Where(k => k.Kind is not (KeyKind.Table or KeyKind.Tables) && table[k.Key] is not null)
            .Select(k => $"{k.Label} {Value(scenario, k, table[k.Key]!)}{(k.Unit.Length > 0 ? " " + k.Unit : "")}"));

    private static string Value(Scenario scenario, KeyFormat key, TomlValue value) => Printable.Line((key.Kind, value) switch
    {
        (KeyKind.InputName, TomlValue.Text name) => scenario.LabelOf(name.Value),
        (KeyKind.InputPair, TomlValue.List { Items: [TomlValue.Text a, TomlValue.Text b] }) =>
            $"{scenario.LabelOf(a.Value)} with {scenario.LabelOf(b.Value)}",
        (KeyKind.Changes or KeyKind.Conditions, TomlValue.Table t) => string.Join(" and ", t.Items.Select(i => scenario.LabelOf(i.Key))),
        (_, TomlValue.Table t) when t["distribution"] is TomlValue.Text family => family.Value,
        _ => FieldValues.Show(value),
    });
}
