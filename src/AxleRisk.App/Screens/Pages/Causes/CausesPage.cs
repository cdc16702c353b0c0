using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Tables;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>What was found on one vehicle, and what it says of the causes; an edit of the evidence answers anew.</summary>
internal sealed class CausesPage(Session session, IDialogs dialogs)
    : AnswerPage<Evidence, CausesResult>(session, dialogs, StudyBook.Causes, "Causes", new Stages(10_000, 50_000))
{
    /// <summary>Rows that the answer keeps below the evidence.</summary>
    private const int LeastBody = 11;

    private readonly TableWork work = new(session, dialogs);
    private readonly ListAndBody view = new();
    private int chosen;
    private int[] lineOf = [];
    private int presses;
    private string outcome = "";

    public override string ShortName => "Why";

    public override string Table => "evidence";

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new("Enter", "change"), new("m", "measured"), new("k", "known state"), new("x", "explanation"), .. CanRemove ? new KeyHint[] { new("Del", "take out") } : [], .. base.Keys,
    ];

    public override PageLine Status => outcome.Length > 0 ? PageLine.Of(outcome, Ink.Warning) : base.Status;

    public override int Revision => HashCode.Combine(base.Revision, presses);

    protected override string? Unavailable =>
        Session.Model.Factors.Factors.IsEmpty
            ? "No value of this scenario is uncertain, so evidence can change nothing. Give at least one input a distribution on the page Inputs."
        : Scenario.Evidence.IsEmpty
            ? "Nothing was found yet. Enter states what is known of the life, m a factor measured, k a state that is known; the answer follows."
        : null;

    private Scenario Scenario => Session.Document.Scenario;

    private IReadOnlyList<EvidenceItem> Items => EvidenceItem.Of(Scenario, Session.Model.Factors);

    private EvidenceItem Chosen => Items[Math.Min(chosen, Items.Count - 1)];

    private bool CanRemove => Chosen.Kind == EvidenceKind.Explanation
        || EvidenceEdits.Remove(Chosen) is not null && (Chosen.Kind != EvidenceKind.Life || Scenario.Evidence.Life is not null);

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
        int edition = Session.Edition;
        switch (key.Name)
        {
            case KeyName.Up or KeyName.Down:
                chosen = Math.Clamp(chosen + (key.Name == KeyName.Up ? -1 : 1), 0, Items.Count - 1);
                return true;
            case KeyName.Enter:
                Change(Chosen);
                return true;
            case KeyName.Delete when Chosen.Kind == EvidenceKind.Explanation:
                Answer(work.Remove(RowOf(Chosen.Index)), edition);
                return true;
            case KeyName.Delete when CanRemove:
                Apply(EvidenceEdits.Remove(Chosen)!);
                return true;
            case KeyName.Character when key.Character == 'x':
                Answer(work.Add(RowOf(null)), edition);
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

    protected override IReadOnlyList<PageLine> Show(CausesResult result, int width, int height) =>
        [.. CausesLines.Of(result, Notes, width), PageLine.Empty, .. Foot(result)];

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
            case EvidenceKind.Explanation:
                int edition = Session.Edition;
                Answer(work.Change(RowOf(item.Index)), edition);
                break;
            default:
                Know(item.Index);
                break;
        }
    }

    private void Measure(int? index)
    {
        if (index is null && MeasureForm.Measurable(Session).All(f => Scenario.Evidence.Measured.Any(m => m.Factor == f.Name)))
        {
            outcome = "There is no further factor that could be measured.";
            return;
        }

        Fill(new MeasureForm(Session, index), f => f.Edit!);
    }

    private void Know(int? index)
    {
        if (index is null && StateForm.Choices(Session).All(f => Scenario.Evidence.Known.Any(k => k.Factor == f.Name)))
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

    /// <summary>The row of the list of explanations, or of one of them.</summary>
    private TableRow RowOf(int? index) =>
        work.Row(index is { } place ? $"{EvidenceFormat.Explanation.Path}[{place}]" : EvidenceFormat.Explanation.Path);

    /// <summary>Makes an edit and answers anew.</summary>
    private void Apply(ScenarioEdit edit)
    {
        int edition = Session.Edition;
        Answer(Session.Apply(edit).Reasons is [var first, ..] ? first : null, edition);
    }

    /// <summary>Tells why nothing was changed, or answers anew.</summary>
    private void Answer(string? refusal, int edition)
    {
        outcome = refusal ?? "";
        if (outcome.Length == 0 && edition != Session.Edition && Unavailable is null)
        {
            Start();
        }
    }
}
