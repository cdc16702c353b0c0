using AxleRisk.App.Screens.Forms;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>What one input is to be, under a key whose table has names of inputs as keys.</summary>
internal interface IInputRow
{
    /// <summary>Its fields behind that of the input.</summary>
    IReadOnlyList<FormField> Fields { get; }

    /// <summary>The value of the file; null where what is typed is none.</summary>
    TomlValue? Value { get; }

    /// <summary>Opens a form of its own for a field.</summary>
    bool Open(FormField field, IDialogs dialogs) => false;

    /// <summary>A field has another text; whether other fields are there now.</summary>
    bool Changed(FormField field) => false;

    /// <summary>What is drawn of a field.</summary>
    IReadOnlyList<PageLine> Picture(FormField field, int width, int height) => [];
}

/// <summary>A key whose table has names of inputs as keys: a few fields for each input, and one row free for a further one.</summary>
internal sealed class RowsEditor : KeyEditor
{
    private const string NoInput = "(none)";

    private readonly IReadOnlyList<Answer> inputs;
    private readonly Func<string, TomlValue?, IInputRow> rowOf;
    private readonly TomlValue? stated;
    private readonly List<Row> rows = [];

    /// <summary>Creates the rows.</summary>
    /// <param name="key">The key.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    /// <param name="inputs">The inputs to choose from.</param>
    /// <param name="rowOf">The fields of an input by its name and what the file states of it.</param>
    public RowsEditor(KeyFormat key, TomlValue? stated, IReadOnlyList<Answer> inputs, Func<string, TomlValue?, IInputRow> rowOf)
        : base(key)
    {
        (this.stated, this.inputs, this.rowOf) = (stated, inputs, rowOf);
        foreach ((string name, TomlValue value) in Named(stated))
        {
            rows.Add(new Row(Input(name), rowOf(name, value)));
        }

        Arrange();
    }

    public override bool IsEmpty => rows.TrueForAll(r => r.Input.Text == NoInput);

    public override TomlValue? Value
    {
        get
        {
            (string Name, TomlValue? Value)[] named = [.. rows.Where(r => r.Of is not null).Select(r => (NameOf(r.Input), r.Of!.Value))];
            if (named.Length == 0 || named.Any(n => n.Value is null) || named.DistinctBy(n => n.Name).Count() < named.Length)
            {
                return null;
            }

            // The same in another notation is left as it stands.
            var value = TomlValue.TableOf(named.Select(n => (n.Name, n.Value!)));
            return stated is not null && TomlValue.TableOf(Named(stated)).Equals(value) ? stated : value;
        }
    }

    public override string MustBe => "inputs, each once, with what is asked of them filled in";

    public override void Clear()
    {
        rows.Clear();
        Arrange();
    }

    public override bool Open(FormField field, IDialogs dialogs) => RowOf(field)?.Of?.Open(field, dialogs) == true;

    public override bool Changed(FormField field)
    {
        if (RowOf(field) is not { } row)
        {
            return false;
        }

        if (row.Input != field)
        {
            bool others = row.Of!.Changed(field);
            Arrange();
            return others;
        }

        rows[rows.IndexOf(row)] = field.Text == NoInput ? new Row(field, null) : new Row(field, rowOf(NameOf(field), null));
        Arrange();
        return true;
    }

    public override IReadOnlyList<PageLine> Picture(FormField field, int width, int height) =>
        RowOf(field)?.Of?.Picture(field, width, height) ?? [];

    private Row? RowOf(FormField field) => rows.Find(r => r.Input == field || r.Of?.Fields.Contains(field) == true);

    private void Arrange()
    {
        rows.RemoveAll(r => r.Of is null && r != rows[^1]);
        if (rows.Count == 0 || rows[^1].Of is not null)
        {
            rows.Add(new Row(Input(null), null));
        }

        Fields = [.. rows.SelectMany(r => (r.Of?.Fields ?? []).Prepend(r.Input))];
    }

    private FormField Input(string? name) =>
        Field(name is null ? NoInput : inputs.FirstOrDefault(i => i.Value.Equals(TomlValue.Of(name)))?.Shown ?? name,
            [NoInput, .. inputs.Select(i => i.Shown)], "input");

    private string NameOf(FormField field) =>
        inputs.FirstOrDefault(i => i.Shown == field.Text)?.Value is TomlValue.Text name ? name.Value : field.Text;

    /// <summary>The entries by the inputs' names, which may be quoted, or dotted and so nested.</summary>
    private IEnumerable<(string Name, TomlValue Value)> Named(TomlValue? value, string before = "") =>
        (value as TomlValue.Table)?.Items.SelectMany(item =>
        {
            string name = before + item.Key;
            bool isPath = inputs.Any(i => ((TomlValue.Text)i.Value).Value.StartsWith(name + ".", StringComparison.Ordinal));
            return isPath && item.Value is TomlValue.Table ? Named(item.Value, name + ".") : [(name, item.Value)];
        }) ?? [];

    private sealed record Row(FormField Input, IInputRow? Of);
}
