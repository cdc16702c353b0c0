using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>What was found on one vehicle, and what it says of the causes; an edit of the evidence answers anew.</summary>
internal sealed class CausesPage(Session session, IDialogs dialogs) : StudyPage<CausesResult>(session, dialogs)
{
    /// <summary>Evaluations of the first answers.</summary>
    private static readonly Stages Stages = new(10_000, 50_000);

    /// <summary>Rows that the answer keeps below the evidence.</summary>
    private const int LeastBody = 11;

    private readonly ListAndBody view = new();
    private int chosen;
    private int[] lineOf = [];
    private int presses;
    private string outcome = "";

    public override string Name => "Causes";

    public override IReadOnlyList<string> Explanation =>
    [
        "The investigator's view of one vehicle: the scenario says how likely everything was before (prior); the evidence found on this vehicle says how likely it is now (posterior). It weighs causes; it proves none.",
        "Evidence is how far the axle got (failed at a distance, between two, or not yet), factors measured on this vehicle with the standard deviation of the reading, and choices whose state was found. It is kept in the scenario file and can be taken back with Ctrl+Z. It changes no other page.",
        "Times likelier compares before and after for the adverse tenth of a factor: the tenth of its values that goes with most damage. 1 means that the evidence says nothing of it.",
        "Explanations are named in the file; several may hold together, so they need not add up. 'nothing unusual' is that none of them holds. One that a known state decides is settled and not weighed.",
        "The effective sample size is how many equally weighted samples the answer is worth: below a few hundred its intervals are wide, below 200 there is no answer.",
    ];

    public override IReadOnlyList<KeyHint> Keys =>
    [
        .. Chosen.Kind == EvidenceKind.Explanation ? [] : new KeyHint[] { new("Enter", "change") },
        new("m", "measured"), new("k", "known state"), .. CanRemove ? new KeyHint[] { new("Del", "take out") } : [], .. base.Keys,
    ];

    public override PageLine Status => outcome.Length > 0 ? PageLine.Of(outcome, Ink.Warning) : base.Status;

    public override int Revision => HashCode.Combine(base.Revision, presses);

    protected override string? Unavailable =>
        Session.Model.Factors.Factors.IsEmpty
            ? "No value of this scenario is uncertain, so evidence can change nothing. Give at least one input a distribution on the page Inputs."
        : Scenario.Evidence.IsEmpty
            ? "Nothing was found yet. Enter states what is known of the life, m a factor measured, k a state that is known; the answer follows."
        : null;

    protected override long DefaultEvaluations => CausesAnalysis.DefaultEvaluations;

    protected override string Invitation => "Weighs the causes by the evidence above. Press r to run it.";

    private Scenario Scenario => Session.Document.Scenario;

    private IReadOnlyList<EvidenceItem> Items => EvidenceItem.Of(Scenario, Session.Model.Factors);

    private EvidenceItem Chosen => Items[Math.Min(chosen, Items.Count - 1)];

    private bool CanRemove =>
        EvidenceEdits.Remove(Chosen) is not null && (Chosen.Kind != EvidenceKind.Life || Scenario.Evidence.Life is not null);

    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        IReadOnlyList<EvidenceItem> items = Items;
        chosen = Math.Clamp(chosen, 0, items.Count - 1);
        _ = EvidenceLines.Of(items, chosen, width, out lineOf);
        return view.Lines(w => EvidenceLines.Of(items, chosen, w, out _), lineOf[chosen], (w, h) => base.Lines(w, h), width, height,
            LeastBody);
    }

    public override bool Press(PageKey key)
    {
        presses++;
        outcome = "";
        switch (key.Name)
        {
            case KeyName.Up or KeyName.Down:
                chosen = Math.Clamp(chosen + (key.Name == KeyName.Up ? -1 : 1), 0, Items.Count - 1);
                return true;
            case KeyName.Enter when Chosen.Kind != EvidenceKind.Explanation:
                Change(Chosen);
                return true;
            case KeyName.Delete when CanRemove:
                Apply(EvidenceEdits.Remove(Chosen)!);
                return true;
            case KeyName.Character when key.Character == 'm':
                Measure(null);
                return true;
            case KeyName.Character when key.Character == 'k':
                Know(null);
                return true;
            default:
                return view.Press(key) || base.Press(key);
        }
    }

    public override bool Wheel(int lines)
    {
        view.Wheel(lines);
        return true;
    }

    public override bool Click(int line, int column)
    {
        if (view.RowAt(line, column) is not { } at || Array.IndexOf(lineOf, at) is not (>= 0 and var row))
        {
            return false;
        }

        bool again = row == chosen;
        chosen = row;
        presses++;
        return !again || Press(KeyName.Enter);
    }

    protected override long Requested(StudySettings settings) => Stages.Requested(settings.Evaluations);

    protected override CausesResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<CausesResult> publish) =>
        WithHeadlines(model, model.Scenario.Evidence.Life?.DistancesKm ?? [], options, headlines => Stages.Run(
            settings, 1, options, publish, (s, o) => CausesAnalysis.Run(model, model.Scenario.Evidence, s, o).With(headlines), r => r.Run));

    protected override IReadOnlyList<PageLine> Show(CausesResult result, int width, int height) =>
        [.. CausesLines.Of(result, Run.ResultElapsed, width)];

    private void Change(EvidenceItem item)
    {
        switch (item.Kind)
        {
            case EvidenceKind.Life:
                Fill(new LifeForm(Session), f => f.Edit!);
                break;
            case EvidenceKind.Measured:
                Measure(item.Index);
                break;
            default:
                Know(item.Index);
                break;
        }
    }

    private void Measure(int? index)
    {
        if (index is null && !MeasureForm.Measurable(Session).Except(Scenario.Evidence.Measured.Select(m => m.Factor)).Any())
        {
            outcome = "There is no further factor that could be measured.";
            return;
        }

        Fill(new MeasureForm(Session, index), f => f.Edit!);
    }

    private void Know(int? index)
    {
        if (index is null && !StateForm.Choices(Session).Except(Scenario.Evidence.Known.Select(k => k.Factor)).Any())
        {
            outcome = "There is no further choice whose state could be known.";
            return;
        }

        Fill(new StateForm(Session, index), f => f.Edit);
    }

    private void Fill<T>(T form, Func<T, ScenarioEdit> edit)
        where T : Form
    {
        if (Dialogs.Fill(form))
        {
            Apply(edit(form));
        }
    }

    /// <summary>Makes an edit and answers anew.</summary>
    private void Apply(ScenarioEdit edit)
    {
        outcome = Session.Apply(edit).Reasons is [var first, ..] ? first : "";
        if (outcome.Length == 0 && Unavailable is null)
        {
            Start();
        }
    }
}
