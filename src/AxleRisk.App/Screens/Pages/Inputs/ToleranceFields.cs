using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>A dimension as the drawing gives it, plus and minus, with an assumed capability of the process.</summary>
internal sealed class ToleranceFields
{
    public const string Kind = "tolerance";

    /// <summary>The place of the upper tolerance; the lower one is behind it.</summary>
    public const int Plus = 1;

    private const string SortedOut = "sorted out", Delivered = "delivered too";

    private readonly TomlPath path;
    private readonly string note;
    private readonly TomlValue.Table? before;
    private bool symmetric;

    /// <summary>The fields, filled with what the file states of the input.</summary>
    /// <param name="input">The input.</param>
    /// <param name="text">The scenario's text.</param>
    public ToleranceFields(Input input, string text)
    {
        path = ScenarioEdits.PathOf(input);
        note = ScenarioEditor.NoteOf(text, path) is var said && said == NewScenario.Mark ? "" : said;
        before = ScenarioEditor.Read(text, path) as TomlValue.Table;
        string unit = input.Quantity.Unit;
        Tolerance stated = Of(input, Tolerance.OfNote(note));
        Fields =
        [
            new("nominal", FieldBook.Show(stated.Nominal), unit), new("plus", FieldBook.Show(stated.Plus), unit),
            new("minus", FieldBook.Show(stated.Minus), unit), new("Cp assumed", FieldBook.Show(stated.Cp)),
            new("Cpk, if less", stated.Cpk is { } cpk ? FieldBook.Show(cpk) : ""),
            new("outside limits", stated.Sorted ? SortedOut : Delivered, "", [SortedOut, Delivered]),
            new("knowledge", ScenarioEdits.KnowledgeWord((input.Value as Value.Uncertain)?.Knowledge ?? Knowledge.Varies), "",
                ["varies", "unknown"]),
        ];
        symmetric = Fields[Plus].Text == Fields[Plus + 1].Text;
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

    /// <summary>Takes a text into a field; minus goes with plus while they are the same.</summary>
    /// <returns>Whether another field changed with it.</returns>
    public bool Set(int field, string text)
    {
        bool areSame = field == Plus && symmetric;
        Fields[field].Text = text;
        Fields[Plus + 1].Text = areSame ? text : Fields[Plus + 1].Text;
        symmetric = Fields[Plus].Text == Fields[Plus + 1].Text;
        return areSame;
    }

    /// <summary>The edit that states it, and notes tolerance and capability behind it; null while something is wrong.</summary>
    public ScenarioEdit? Edit() => Problem is not null ? null : new ScenarioEdit(path.ToString(),
    [
        new TomlEdit.Set(path, Stated().ToValue(Fields[6].Text, before)),
        new TomlEdit.Note(path, Stated().Into(note)),
    ]);

    /// <summary>The tolerance that gives what is stated: as noted where that is the same, else from spread and limits.</summary>
    private static Tolerance Of(Input input, Tolerance? noted)
    {
        if (input.Value is not Value.Uncertain { Distribution: var distribution })
        {
            double stated = input.Value.Nominal, spread = ValueConversion.StartingCov * Math.Abs(stated);
            return new Tolerance(stated, spread, spread, Tolerance.UsualCp);
        }

        Distribution whole = distribution is Truncated cut ? cut.Inner : distribution;
        (double mean, double sd) = (whole.Mean, whole.StandardDeviation);
        if (noted is { Problem: null } && Same(noted.Mean, mean) && Same(noted.StandardDeviation, sd))
        {
            return noted;
        }

        // The mean of a cut normal is off that of the whole by less than a drawing states.
        double nominal = Same(input.Value.Nominal, mean) ? mean : input.Value.Nominal;
        Domain domain = input.Quantity.Domain;
        bool isLimited = distribution.Minimum > domain.Low && distribution.Maximum < domain.High
            && double.IsFinite(distribution.Maximum - distribution.Minimum);
        double half = 3 * sd * Tolerance.UsualCp;
        (double low, double high) = isLimited ? (distribution.Minimum, distribution.Maximum) : (mean - half, mean + half);
        double cp = (high - low) / (6 * sd);
        double cpk = (mean - low) / (3 * sd);
        return new Tolerance(nominal, nominal - low, high - nominal, cp, cpk < cp && !Same(cpk, cp) ? cpk : null, isLimited);
    }

    // As alike as four figures are.
    private static bool Same(double a, double b) => Math.Abs(a - b) <= 5e-4 * Math.Abs(b);

    private Tolerance Stated() => new(
        At(0), At(2), At(1), At(3), Fields[4].Text.Length == 0 ? null : At(4), Sorted: Fields[5].Text == SortedOut);

    private double At(int field) => InputEditor.Number(Fields[field].Text) ?? double.NaN;
}
