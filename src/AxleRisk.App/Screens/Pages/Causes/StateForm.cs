using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>A choice whose state was found on this vehicle.</summary>
internal sealed class StateForm : Form
{
    private readonly Session session;
    private readonly int? index;

    /// <summary>Creates the form; there must be a choice.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="index">The known state to change; null for a new one.</param>
    public StateForm(Session session, int? index)
    {
        this.session = session;
        this.index = index;
        KnownState? known = index is int i ? session.Document.Scenario.Evidence.Known[i] : null;
        Factor[] choices = [.. Choices(session)
            .Where(f => f.Name == known?.Factor || !session.Document.Scenario.Evidence.Known.Any(k => k.Factor == f.Name))];
        Build(
            [.. choices.Select(f => f.Label)], (choices.FirstOrDefault(f => f.Name == known?.Factor) ?? choices[0]).Label, known?.Value);
    }

    public override string Title => "A state known of this vehicle";

    /// <summary>The edit.</summary>
    public ScenarioEdit Edit => EvidenceEdits.Know(index, Factor, Choice(Factor).Values.First(v => Factor.Show(v) == Fields[1].Text));

    private Factor Factor => Labelled(Fields[0].Text);

    /// <summary>The factors that are a choice.</summary>
    public static IEnumerable<Factor> Choices(Session session) =>
        session.Model.Factors.Factors.Where(f => f.Distribution is NumberChoice);

    public override IReadOnlyList<PageLine> Picture(int width, int height) =>
    [
        .. Wrap.Lines($"{Factor.Label} ({Factor.Name}): {DistributionText.Of(Factor)}", width, "").Select(l => PageLine.Of(l, Ink.Quiet)),
    ];

    protected override void Changed(int field)
    {
        if (field == 0)
        {
            Build(Fields[0].Choices!, Fields[0].Text, null);
        }

        Refusal = session.WhyNot(Edit);
    }

    private Factor Labelled(string label) => session.Model.Factors.Factors.First(f => f.Label == label);

    private static NumberChoice Choice(Factor factor) => (NumberChoice)factor.Distribution!;

    private void Build(IReadOnlyList<string> labels, string label, double? state)
    {
        Factor factor = Labelled(label);
        string[] states = [.. Choice(factor).Values.Select(factor.Show)];
        Arrange([new FormField("choice", label, "", labels),
            new FormField("state", factor.Show(state ?? Choice(factor).Values[0]), factor.Unit, states)]);
        Refusal = session.WhyNot(Edit);
    }
}
