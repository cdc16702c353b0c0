using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>A condition on an input that is continuous: a range, with one end or both.</summary>
internal sealed class RangeRow : IInputRow
{
    /// <summary>Creates the fields.</summary>
    /// <param name="unit">The input's unit.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    public RangeRow(string unit, TomlValue? stated) =>
        Fields = [.. EvidenceFormat.Range.Keys.Select(k => new FormField(
            "  " + k.Label, (stated as TomlValue.Table)?[k.Key] is { } end ? FieldValues.Show(end) : "", unit)
        { Help = $"The condition holds where the input lies {k.Label} this; one end may be left empty.", IsNumber = true })];

    public IReadOnlyList<FormField> Fields { get; }

    public TomlValue? Value
    {
        get
        {
            (string Key, string Text)[] typed = [.. EvidenceFormat.Range.Keys.Select((k, i) => (k.Key, Fields[i].Text.Trim()))
                .Where(t => t.Item2.Length > 0)];
            return typed.Length == 0 || typed.Any(t => InputEditor.Number(t.Text) is null) ? null
                : TomlValue.TableOf(typed.Select(t =>
                    (t.Key, (TomlValue)new TomlValue.Number(InputEditor.Number(t.Text)!.Value, t.Text))));
        }
    }
}

/// <summary>A condition on a choice: the state it is in.</summary>
internal sealed class StateRow : IInputRow
{
    private readonly ChoiceEditor state;

    /// <summary>Creates the field.</summary>
    /// <param name="states">The states to choose from.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    public StateRow(IReadOnlyList<Answer> states, TomlValue? stated) => state = new ChoiceEditor(
        new KeyFormat("state", "  is", "", new KeyKind.State(), "the state of the choice") { IsRequired = true }, stated, states);

    public IReadOnlyList<FormField> Fields => state.Fields;

    public TomlValue? Value => state.Value;
}
