using AxleRisk.App.Charts;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>A number or a distribution in one field: a number is typed, a distribution has a form of its own.</summary>
/// <param name="session">The open scenario.</param>
/// <param name="quantity">What it is of.</param>
/// <param name="stated">What the file states; null for nothing.</param>
/// <param name="start">What a form begins with where nothing is stated; null where that is not known.</param>
internal sealed class StatedValue(Session session, Quantity quantity, TomlValue? stated, Value? start = null)
{
    private const string Key = "value";

    /// <summary>What a form of its own would be, for the line below a form.</summary>
    public const string Opens = "a distribution";

    private TomlValue? stated = stated;
    private string shown = Show(session, quantity, stated);

    /// <summary>What a field shows.</summary>
    public string Shown => shown;

    /// <summary>The value; null where nothing is stated or a field's text is none.</summary>
    /// <param name="typed">The text of the field.</param>
    public TomlValue? Of(string typed) => typed.Trim() is var text && text == shown ? stated
        : InputEditor.Number(text) is { } number ? new TomlValue.Number(number, text) : null;

    /// <summary>What is drawn of it.</summary>
    public IReadOnlyList<PageLine> Picture(string typed, int width, int height) =>
        Of(typed) is TomlValue.Table table && Read(session, quantity, table) is Value.Uncertain { Distribution: var distribution }
            ? Pictures.Lines(DensityChart.Draw(distribution, quantity.Unit, width, Math.Clamp(height, 0, 10))) : [];

    /// <summary>Lets the reader state it in a form of its own.</summary>
    /// <returns>Whether it was stated.</returns>
    public bool Fill(string typed, IDialogs dialogs)
    {
        TomlValue? present = Of(typed);
        Value value = (present is null ? start : Read(session, quantity, present)) ?? new Value.Certain(1);
        var input = new Input(Key, quantity, null, value, IsDefault: present is null);
        var form = new QuantityForm(input, i => new LoneJudge(session.Edited, i, present));
        if (!dialogs.Fill(form) || form.Edit?.Steps.OfType<TomlEdit.Set>().FirstOrDefault() is not { } set)
        {
            return false;
        }

        stated = set.Value;
        shown = Show(session, quantity, stated);
        return true;
    }

    private static string Show(Session session, Quantity quantity, TomlValue? stated) => stated switch
    {
        null => "",
        TomlValue.Table table when Read(session, quantity, table) is Value.Uncertain { Distribution: var d } =>
            $"{d.Family} {Figures.Number(d.Quantile(0.05))}..{Figures.Number(d.Quantile(0.95))}",
        _ => FieldValues.Show(stated),
    };

    private static Value? Read(Session session, Quantity quantity, TomlValue stated) =>
        session.Edited.ReadValue($"{Key} = {stated.Write()}\n", Key, quantity.Domain).Value;
}

/// <summary>A key whose value is a number or a distribution.</summary>
internal sealed class ValueEditor : KeyEditor
{
    private readonly StatedValue value;

    /// <summary>Creates the field.</summary>
    public ValueEditor(Session session, KeyFormat key, TomlValue? stated)
        : base(key)
    {
        Domain domain = ((KeyKind.Uncertain)key.Kind).Domain;
        Quantity quantity = key.Quantity ?? new Quantity("", key.Key, key.Label, key.Unit, domain, key.Meaning);
        value = new StatedValue(session, quantity, stated,
            quantity.Default ?? (InputEditor.Number(key.Start) is { } start ? new Value.Certain(start) : null));
        Fields = [Field(value.Shown, isNumber: true)];
    }

    public override bool IsEmpty => Fields[0].Text.Trim().Length == 0;

    public override TomlValue? Value => IsEmpty ? null : value.Of(Fields[0].Text);

    public override string MustBe => base.MustBe + ", or a distribution (F2)";

    public override string Opens => StatedValue.Opens;

    public override void Clear() => Fields[0].Text = "";

    public override bool Open(FormField field, IDialogs dialogs)
    {
        if (value.Fill(field.Text, dialogs))
        {
            field.Text = value.Shown;
        }

        return true;
    }

    public override IReadOnlyList<PageLine> Picture(FormField field, int width, int height) => value.Picture(field.Text, width, height);
}
