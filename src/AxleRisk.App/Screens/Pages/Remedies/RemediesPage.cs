using System.Collections.Immutable;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Tables;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages.Remedies;

/// <summary>The scenario's remedies, switched on and off; what those switched on do is answered anew with every switch.</summary>
internal sealed class RemediesPage(Session session, IDialogs dialogs) : StudyPage<RemedySetResult>(session, dialogs)
{
    /// <summary>Evaluations of each case for the first answers.</summary>
    private static readonly Stages Stages = new(2_000, 20_000);

    /// <summary>Rows that the answer keeps below the list.</summary>
    private const int LeastBody = 12;

    private readonly TableWork work = new(session, dialogs);
    private readonly ListAndBody view = new();
    private readonly HashSet<string> on = [];
    private ImmutableHashSet<string> started = [];
    private int chosen;
    private int presses;
    private string outcome = "";

    public override string Name => "Remedies";

    public override string ShortName => "Fix";

    public override IReadOnlyList<string> Explanation => StudyBook.Remedies.Explanation;

    public override string Table => "remedies";

    public override IReadOnlyList<KeyHint> Keys => All.IsEmpty ? [new("a", "add")] :
    [
        new("Space", "on/off"), new("Enter", "change"), new("a", "add"), new("Del", "take out"), .. base.Keys,
    ];

    public override PageLine Status => outcome.Length > 0 ? PageLine.Of(outcome, Ink.Warning) : base.Status;

    public override int Revision => HashCode.Combine(base.Revision, presses);

    /// <summary>The remedies switched on, in file order.</summary>
    public ImmutableArray<Remedy> On => [.. All.Where(r => on.Contains(r.Name))];

    protected override string? Unavailable =>
        All.IsEmpty ? "This scenario has no remedies. a adds one: inputs that would be changed, under a name." : null;

    protected override long DefaultEvaluations => Comparison.DefaultEvaluations;

    protected override string Invitation =>
        "Compares the remedies that are switched on with none. Space switches one on or off; r runs it.";

    private ImmutableArray<Remedy> All => Session.Document.Scenario.Remedies;

    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        if (All.IsEmpty)
        {
            return base.Lines(width, height);
        }

        chosen = Math.Clamp(chosen, 0, All.Length - 1);
        return view.Lines(
            w => RemedyLines.List(Session.Document.Scenario, on, chosen, w), RemedyLines.Above + (2 * chosen) + 1, (w, h) =>
                base.Lines(w, h), width, height, LeastBody);
    }

    public override bool Press(PageKey key)
    {
        presses++;
        outcome = "";
        int edition = Session.Edition;
        switch (key.Name)
        {
            case KeyName.Up or KeyName.Down when !All.IsEmpty:
                chosen = Math.Clamp(chosen + (key.Name == KeyName.Up ? -1 : 1), 0, All.Length - 1);
                return true;
            case KeyName.Character when key.Character == ' ' && !All.IsEmpty:
                string name = All[Math.Min(chosen, All.Length - 1)].Name;
                _ = on.Remove(name) || on.Add(name);
                Start();
                return true;
            case KeyName.Character when key.Character == 'a':
                Answer(work.Add(Row(null)), edition);
                return true;
            case KeyName.Enter when !All.IsEmpty:
                Answer(work.Change(Row(chosen)), edition);
                return true;
            case KeyName.Delete when !All.IsEmpty:
                Answer(work.Remove(Row(chosen)), edition);
                return true;
            default:
                return (!All.IsEmpty && view.Press(key)) || base.Press(key);
        }
    }

    public override bool Wheel(int lines)
    {
        view.Wheel(lines);
        return true;
    }

    public override bool Click(int line, int column)
    {
        if (All.IsEmpty || view.RowAt(line, column) - RemedyLines.Above is not (>= 0 and var row) || row >= 2 * All.Length)
        {
            return false;
        }

        bool again = row / 2 == chosen;
        chosen = row / 2;
        presses++;
        return !again || Press(' ');
    }

    public override void Start()
    {
        started = [.. on];
        base.Start();
    }

    protected override long Requested(StudySettings settings) =>
        Stages.All(settings.Evaluations).Sum() * RemedySetResult.CasesOf(On.Length, All.Length);

    protected override RemedySetResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<RemedySetResult> publish)
    {
        // The set as it was when the study began, whatever is switched while it runs: that begins another.
        ImmutableArray<Remedy> set = [.. model.Scenario.Remedies.Where(r => started.Contains(r.Name))];
        RiskHeadline headline = Session.Risk.Headlines(model)([model.Scenario.RequiredKm], options)[0];
        return Stages.Run(
            settings, RemedySetResult.CasesOf(set.Length, model.Scenario.Remedies.Length), options, publish,
            (s, o) => RemedySetResult.Run(model, set, s, o).With(headline), r => r.Comparison.Run);
    }

    protected override IReadOnlyList<PageLine> Show(RemedySetResult result, int width, int height)
    {
        IReadOnlyList<PageLine> lines = [.. RemedyLines.Of(result, StudyBook.Remedies.Notes(Session.Document), Run.ResultElapsed, width)];

        // Another set has been switched on and its answer is not there yet.
        return result.Chosen.Select(r => r.Name).SequenceEqual(On.Select(r => r.Name)) || IsOutOfDate
            ? lines
            : [PageLine.Of("OUT OF DATE: another set is switched on now; its answer is on its way.", Ink.Warning),
                .. lines.Select(l => l.In(Ink.Quiet))];
    }

    /// <summary>The row of the list of remedies, or of one of them.</summary>
    private TableRow Row(int? index) => work.Row(index is { } place ? $"{Table}[{place}]" : Table);

    /// <summary>Tells why nothing was changed, or answers anew.</summary>
    private void Answer(string? refusal, int edition)
    {
        outcome = refusal ?? "";
        if (edition != Session.Edition && !All.IsEmpty)
        {
            Start();
        }
    }
}
