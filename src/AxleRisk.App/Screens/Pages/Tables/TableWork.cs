using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>Adds, changes, copies, moves and takes out tables of the scenario by forms. Each gives why it was not done, or null.</summary>
/// <param name="session">The open scenario.</param>
/// <param name="dialogs">Shows the forms.</param>
internal sealed class TableWork(Session session, IDialogs dialogs)
{
    private string Text => session.Edited.Text;

    /// <summary>The row of a path in the file; for a table that is not there but has a list that it needs, that list's.</summary>
    public TableRow Row(string path) => Rows().First(r => r.Path.Equals(TomlPath.Of(path)));

    /// <summary>All rows.</summary>
    public IReadOnlyList<TableRow> Rows() => TableRow.Of(session.Document.Scenario, Text);

    /// <summary>Adds a table: to the list of a row, or the one of the row, where it is not there.</summary>
    public string? Add(TableRow row) => row switch
    {
        { List: null, IsStated: true } => "There is one already: Enter changes it.",
        { List: null } when Needed(row) is { } list => Add(list),
        { List: null } => Change(row),
        _ => Append(row, Start(row)),
    };

    /// <summary>Changes a table, or adds the first where there is none.</summary>
    public string? Change(TableRow row)
    {
        if (row.List is not null && row.Index is null)
        {
            return Add(row);
        }

        if (!row.IsStated && Needed(row) is { } list)
        {
            return Add(list);
        }

        TomlValue.Table stated = row.IsStated && ScenarioEditor.Read(Text, row.Path) is TomlValue.Table there ? there : Start(row);
        return Fill(row, row.Label, stated, row.Path, table => TableEdits.Change(Text, row.Format, row.Path, table));
    }

    /// <summary>Adds a copy of a table of a list, to be changed before.</summary>
    public string? Copy(TableRow row) => row.Index is null ? "Choose one of a list to copy it."
        : ScenarioEditor.Read(Text, row.Path) is TomlValue.Table table ? Append(row, Renamed(row, table)) : null;

    /// <summary>Lets a table change places with a neighbour.</summary>
    public string? Move(TableRow row, int by)
    {
        int count = TableEdits.Count(Text, row.ListPath);
        return row.Index is not { } index ? "Choose one of a list to move it."
            : index + by < 0 || index + by >= count ? "It is at the end of its list."
            : Apply(new ScenarioEdit($"{row.ListPath}: order", [new TomlEdit.Swap(row.ListPath, Math.Min(index, index + by))]));
    }

    /// <summary>Takes a table out.</summary>
    public string? Remove(TableRow row) => !row.IsStated ? null
        : row.Index is { } index ? Apply(TableEdits.Remove(Text, row.Format, row.ListPath, index))
        : Apply(ScenarioEdit.Remove(row.Path));

    /// <summary>The list without which a table that is not there cannot be: its first element is what is asked for.</summary>
    private TableRow? Needed(TableRow row) => row.IsStated || row.List is not null ? null
        : row.Format.Keys.FirstOrDefault(k => k is { IsRequired: true, Kind: KeyKind.Tables }) is { } key
            ? Rows().First(r => r.Path.Equals(row.Path.Then(key.Key))) : null;

    private string? Append(TableRow row, TomlValue.Table start)
    {
        TomlPath list = row.ListPath;
        return Fill(row, $"{row.List!.Called}: one more", start, list.At(TableEdits.Count(Text, list)),
            table => TableEdits.Add(Text, row.Format, list, table));
    }

    private string? Fill(TableRow row, string title, TomlValue.Table stated, TomlPath at, Func<TomlValue.Table, ScenarioEdit> edit)
    {
        if (session.Edited.WhyOnlyLook is { } why)
        {
            return why;
        }

        if (Impossible(row) is { } reason)
        {
            return reason;
        }

        var form = new TableForm(session, title, row.Format, at, stated, edit);
        return dialogs.Fill(form) && form.Edit is { } made ? Apply(made) : null;
    }

    /// <summary>Why there is nothing to fill in: a table about uncertain inputs, and none is.</summary>
    private string? Impossible(TableRow row)
    {
        int inputs = session.Model.Factors.Factors.Count(f => f is ScalarFactor or WordFactor);
        bool needsOne = row.Format.Keys.Any(k => k is { IsRequired: true, Kind: KeyKind.InputName or KeyKind.Conditions });
        bool needsTwo = row.Format.Keys.Any(k => k.Kind is KeyKind.InputPair);
        return (needsOne && inputs < 1) || (needsTwo && inputs < 2)
            ? "Give inputs a distribution first (page Inputs): this is about uncertain ones." : null;
    }

    /// <summary>What a new table begins with, as it is described; its name is one that is not there yet.</summary>
    private TomlValue.Table Start(TableRow row) => Renamed(row, TomlValue.TableOf(row.Format.Keys
        .Select(k => (k.Key, Value: StartOf(k))).Where(k => k.Value is not null).Select(k => (k.Key, k.Value!))));

    private TomlValue? StartOf(KeyFormat key) => key.Kind switch
    {
        KeyKind.Text { IsUsualLeg: true } => TomlValue.Of(session.Document.Scenario.Legs[0].Name),
        _ when key.Start.Length == 0 => null,
        KeyKind.Word or KeyKind.Category or KeyKind.PlainName or KeyKind.Line or KeyKind.Text => TomlValue.Of(key.Start),
        _ => FieldValues.Parse(key.Key, key.Start, out _),
    };

    private TomlValue.Table Renamed(TableRow row, TomlValue.Table table)
    {
        if (row.List is null || table["name"] is not TomlValue.Text { Value: var name })
        {
            return table;
        }

        string[] there = ScenarioEditor.Read(Text, row.ListPath) is TomlValue.List list
            ? [.. list.Items.OfType<TomlValue.Table>().Select(t => (t["name"] as TomlValue.Text)?.Value ?? "")] : [];
        string free = Enumerable.Range(1, there.Length + 1).Select(n => n == 1 ? name : $"{name}-{n}").First(n => !there.Contains(n));
        return new TomlValue.Table([.. table.Items.Select(i => i.Key == "name" ? i with { Value = TomlValue.Of(free) } : i)]);
    }

    private string? Apply(ScenarioEdit edit) => session.Apply(edit).Reasons is [var first, ..] ? first : null;
}
