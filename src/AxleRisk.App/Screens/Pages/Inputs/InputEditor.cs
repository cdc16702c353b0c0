using System.Globalization;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>Changes one input by asking the reader; what cannot be is refused where it is typed.</summary>
internal sealed class InputEditor(Session session, IDialogs dialogs)
{
    /// <summary>Changes an input.</summary>
    /// <returns>Why it was not changed; null where it was, or where the reader left.</returns>
    public string? Change(InputRow row) => session.Edited.WhyOnlyLook ?? row.Kind switch
    {
        InputKind.Number => Ask(row, text => Number(text) is { } n ? ScenarioEdit.Set(row.Path, new TomlValue.Number(n, text)) : null),
        InputKind.Text => Ask(row, text => ScenarioEdit.Set(row.Path, TomlValue.Of(text))),
        InputKind.Word => Fill(new WordForm(session, row), f => f.Edit),
        InputKind.Category => Fill(new CategoryForm(session, row), f => f.Edit!),
        InputKind.Quantity => Fill(new QuantityForm(session, row), f => f.Edit!),
        _ => "Not changed here: Del takes it out; remedies and evidence have pages of their own.",
    };

    /// <summary>States an input by the tolerance of its drawing.</summary>
    /// <returns>Why it was not stated; null where it was, or where the reader left.</returns>
    public string? Tolerance(InputRow row) =>
        session.Edited.WhyOnlyLook ?? Fill(new QuantityForm(session, row, asTolerance: true), f => f.Edit!);

    /// <summary>Writes the note of an input: where its value comes from.</summary>
    /// <returns>Why it was not written; null where it was, or where the reader left.</returns>
    public string? Note(InputRow row)
    {
        ScenarioEdit Edit(string text) => new($"{row.Path}", [new TomlEdit.Note(row.Path, text)]);
        string present = ScenarioEditor.NoteOf(session.Edited.Text, row.Path);
        return session.WhyNot(Edit(present)) is { } why ? why
            : dialogs.Ask($"Note: {row.Label}", "Where the value comes from, or what else is to be known of it; it stands as comment in the file:",
                present, t => session.WhyNot(Edit(t))) is { } text ? Apply(Edit(text)) : null;
    }

    /// <summary>Sets the rank correlation of two inputs.</summary>
    /// <returns>Why it was not set; null where it was, or where the reader left.</returns>
    public string? Correlate(Factor first, Factor second, double present)
    {
        ScenarioEdit? Edit(string text) =>
            Number(text) is { } r ? ScenarioEdits.Correlation(session.Document.Scenario, first.Name, second.Name, r) : null;
        string? text = dialogs.Ask(
            "Rank correlation", $"{first.Label} with {second.Label}: Spearman's rank correlation, above -1 and below 1; 0 makes them independent.",
            present.ToString("0.###", CultureInfo.InvariantCulture), t =>
                Edit(t) is { } e ? session.WhyNot(e) : "a number above -1 and below 1");
        return text is null ? null : Apply(Edit(text)!);
    }

    /// <summary>A number as typed; null where it is none.</summary>
    public static double? Number(string text) =>
        double.TryParse(text.Replace("_", ""), NumberStyles.Float, CultureInfo.InvariantCulture, out double n) && double.IsFinite(n)
            ? n : null;

    private string? Ask(InputRow row, Func<string, ScenarioEdit?> edit)
    {
        string unit = row.Unit.Length > 0 ? $" in {row.Unit}" : "";
        string initial = row.IsStated ? row.ValueText : "";
        string? text = dialogs.Ask(
            row.Label, $"{row.Meaning}{unit}; {row.Allowed}", initial, t => edit(t) is { } e ? session.WhyNot(e) : row.Allowed);
        return text is null ? null : Apply(edit(text)!);
    }

    private string? Fill<T>(T form, Func<T, ScenarioEdit> edit)
        where T : Form => dialogs.Fill(form) ? Apply(edit(form)) : null;

    private string? Apply(ScenarioEdit edit) => session.Apply(edit).Reasons is [var first, ..] ? first : null;
}
