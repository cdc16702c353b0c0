using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>A dimension as the drawing gives it, plus and minus, with an assumed capability of the process.</summary>
internal sealed class ToleranceFields
{
    public const string Kind = "tolerance";

    public ToleranceFields(Value value, string unit)
    {
        string spread = FieldBook.Show(0.05 * Math.Abs(value.Nominal));
        Fields =
        [
            new("nominal", FieldBook.Show(value.Nominal), unit), new("plus", spread, unit), new("minus", spread, unit),
            new("Cp assumed", FieldBook.Show(Tolerance.UsualCp)), new("Cpk, if less", ""),
            new("outside limits", "sorted out", "", ["sorted out", "delivered too"]), new("knowledge", "varies", "", ["varies", "unknown"]),
        ];
    }

    public IReadOnlyList<FormField> Fields { get; }

    /// <summary>What is wrong with it; null where nothing is.</summary>
    public string? Problem
    {
        get
        {
            foreach (FormField wrong in Fields.Take(5))
            {
                wrong.Refusal = InputEditor.Number(wrong.Text) is null && !(wrong.Text.Length == 0 && wrong == Fields[4])
                    ? "a number such as 0.3" : null;
            }

            return Fields.Any(f => f.Refusal is not null) ? "the tolerance is not complete" : Stated().Problem;
        }
    }

    public void Set(int field, string text) => Fields[field].Text = text;

    /// <summary>The edit that states it; null while something is wrong.</summary>
    public ScenarioEdit? Edit(TomlPath path) => Problem is null ? ScenarioEdit.Set(path, Stated().ToValue(Fields[6].Text)) : null;

    private Tolerance Stated() => new(
        At(0), At(2), At(1), At(3), Fields[4].Text.Length == 0 ? null : At(4), Sorted: Fields[5].Text == "sorted out");

    private double At(int field) => InputEditor.Number(Fields[field].Text) ?? double.NaN;
}
