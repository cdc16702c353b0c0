using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Text;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>A factor measured on this vehicle, with the accuracy of the reading.</summary>
internal sealed class MeasureForm : Form
{
    private readonly Session session;
    private readonly int? index;

    /// <summary>Creates the form; there must be a factor that can be measured.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="index">The measurement to change; null for a new one.</param>
    public MeasureForm(Session session, int? index)
    {
        this.session = session;
        this.index = index;
        Measurement? known = index is int i ? session.Document.Scenario.Evidence.Measured[i] : null;
        Factor[] choices = [.. Measurable(session)
            .Where(f => f.Name == known?.Factor || !session.Document.Scenario.Evidence.Measured.Any(m => m.Factor == f.Name))];
        string factor = (choices.FirstOrDefault(f => f.Name == known?.Factor) ?? choices[0]).Label;
        Arrange(
        [
            new FormField("factor", factor, "", [.. choices.Select(f => f.Label)]),
            new FormField("value read", known is null ? "" : FieldBook.Show(known.Value), Unit(factor)),
            new FormField("sd of its error", known is null ? "" : FieldBook.Show(known.StandardDeviation), Unit(factor)),
        ]);
        Check();
    }

    public override string Title => "A factor measured on this vehicle";

    /// <summary>The edit; null while a field is no number.</summary>
    public ScenarioEdit? Edit =>
        Number(1) is { } value && Number(2) is { } sd ? EvidenceEdits.Measure(index, Labelled(Fields[0].Text)!.Name, value, sd) : null;

    private Factor? Factor => Labelled(Fields[0].Text);

    /// <summary>The factors that can be measured: continuous, and not seen in the life alone.</summary>
    public static IEnumerable<Factor> Measurable(Session session) => session.Model.Factors.Factors.OfType<ScalarFactor>()
        .Where(f => f.Distribution is not NumberChoice && f.Input.Quantity != Quantities.MinerSum
            && f.Input.Quantity != Quantities.LifeScatter && f.Input.Quantity != Quantities.SectionLifeScatter);

    public override IReadOnlyList<PageLine> Picture(int width, int height)
    {
        if (Factor is not ScalarFactor { Distribution: var d } factor)
        {
            return [];
        }

        string[] text =
        [
            $"{factor.Label} ({factor.Name})", factor.Input.Quantity.Meaning,
            $"In the scenario 5 % lie below {Figures.Number(d.Quantile(0.05))}, half below {Figures.Number(d.Median)}, 95 % below {Figures.Number(d.Quantile(0.95))} {factor.Unit}.",
            "Two readings in three lie within one sd of the true value.",
        ];
        return [.. text.SelectMany(t => Wrap.Lines(t, width, "").Append("")).Select(l => PageLine.Of(l, Ink.Quiet))];
    }

    protected override void Changed(int field)
    {
        if (field == 0)
        {
            Arrange([Fields[0], new FormField("value read", "", Unit(Fields[0].Text)),
                new FormField("sd of its error", "", Unit(Fields[0].Text))]);
        }

        Check();
    }

    private void Check()
    {
        Fields[1].Refusal = Number(1) is null ? "a number such as 5.3" : null;
        Fields[2].Refusal = Number(2) is { Value: > 0 } ? null : "a number above 0";
        Refusal = Fields.All(f => f.Refusal is null) ? session.WhyNot(Edit!) : null;
    }

    private TomlValue.Number? Number(int field) => InputEditor.Number(Fields[field].Text) is double x
        ? new TomlValue.Number(x, Fields[field].Text) : null;

    private string Unit(string factor) => Labelled(factor)?.Unit ?? "";

    private Factor? Labelled(string label) => session.Model.Factors.Factors.FirstOrDefault(f => f.Label == label);
}
