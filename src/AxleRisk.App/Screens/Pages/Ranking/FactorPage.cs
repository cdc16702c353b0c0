using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages.Ranking;

/// <summary>One factor: the failure probability across its range, its spread, its direction and what it combines with.</summary>
internal sealed class FactorPage(Session session, IDialogs dialogs, CombinationsPage combinations, string factor)
    : StudyPage<FactorRangeResult>(session, dialogs)
{
    private static readonly Stages Stages = new(1_000, 8_000);
    private const int MostPairs = 4;

    public override string Name => Session.Document.Scenario.LabelOf(factor);

    public override IReadOnlyList<string> Explanation =>
    [
        "The failure probability of all vehicles if this one factor were the same for all of them, at each point of its range; everything else stays as uncertain as it is. The dotted line is the scenario as it is, with the factor free.",
        "The points are quantiles: at its 5 % point, one vehicle in twenty has less. A flat curve means that controlling the factor is worth nothing; a steep end tells where the danger lies.",
        "All points use the same random numbers, so that the shape of the curve is surer than the interval of each point. A correlated factor is held without moving the others.",
        "What it combines with comes from the page Combinations; c runs that study from here.",
    ];

    public override IReadOnlyList<KeyHint> Keys => [.. base.Keys, .. CanCombine ? new KeyHint[] { new("c", "find partners") } : []];

    public override int Revision => HashCode.Combine(base.Revision, combinations.Revision);

    protected override string? Unavailable => Found is null ? $"{Name} is certain now: it is no factor any more. Esc goes back." : null;

    protected override long DefaultEvaluations => FactorRangeAnalysis.DefaultEvaluations;

    protected override string Invitation => "The first answer is on its way.";

    private Factor? Found => Session.Model.Factors.Find(factor);

    private bool CanCombine => combinations.Run.Standing.Phase is not (RunPhase.Running or RunPhase.Stopped)
        && (combinations.Run.Result is null || combinations.IsOutOfDate);

    public override bool Press(PageKey key)
    {
        if (key.Character == 'c' && CanCombine)
        {
            combinations.Start();
            return true;
        }

        return base.Press(key);
    }

    protected override long Requested(StudySettings settings) =>
        Stages.All(settings.Evaluations).Sum() * (Found is { } f ? FactorRangeAnalysis.CasesOf(f) : 1);

    protected override FactorRangeResult Study(LifeModel model, StudySettings settings, RunOptions options,
        Action<FactorRangeResult> publish)
    {
        Factor held = model.Factors.Find(factor) ?? throw new StudyException($"{Name} is no factor any more");
        RiskHeadline headline = Session.Risk.Headlines(model)([model.Scenario.RequiredKm], options)[0];
        return Stages.Run(
            settings, FactorRangeAnalysis.CasesOf(held), options, publish, (s, o) => FactorRangeAnalysis.Run(model, held, s, o, headline),
            r => r.Run);
    }

    protected override IReadOnlyList<PageLine> Show(FactorRangeResult result, int width, int height) =>
    [
        .. FactorPictures.Head(result, width), .. FactorPictures.Across(result, width, Math.Clamp(height - 7, 8, 24)),
        .. FactorPictures.Reading(result, Math.Min(width, Layout.Width)).Select(l => PageLine.Of(l)), PageLine.Empty,
        PageLine.Of("What it combines with", Ink.Heading), .. Partners(Math.Min(width, Layout.Width)), PageLine.Empty,
        .. PageLine.Of(Frame.Foot(Frame.Run(result.Run, Method(result)), Frame.Partial(result.Run), Run.ResultElapsed)),
    ];

    private static string Method(FactorRangeResult result) => $"{result.Points.Length + 1} cases with these same samples, "
        + (result.IsConditional ? "exact failure probabilities given the damage averaged" : "failures counted");

    private IEnumerable<PageLine> Partners(int width)
    {
        if (combinations.Run.Standing.Phase == RunPhase.Running && combinations.Run.Result is null)
        {
            return [PageLine.Of("  The combinations are being looked for.", Ink.Quiet)];
        }

        if (combinations.Run.Result is not { } found)
        {
            return [PageLine.Of("  Not looked for yet: c does, or run the page Combinations.", Ink.Quiet)];
        }

        string name = Printable.Line(Name);
        string[] interactions =
        [
            .. found.Interactions.Where(i => (i.First == factor || i.Second == factor) && i.SecondOrder.Low > 0).Take(MostPairs)
                .Select(i => $"{name} with {Printable.Line(i.First == factor ? i.SecondLabel : i.FirstLabel)}: together they explain {Figures.Share(i.SecondOrder.Estimate)} of the variance of failure beyond what each explains."),
        ];
        PairEffect[] pairs = [.. found.Pairs.Where(p => p.IsNotable && (p.First.Factor.Name == factor || p.Second.Factor.Name == factor))
            .Take(MostPairs)];
        string stale = combinations.IsOutOfDate ? "OUT OF DATE: " : "";
        string[] sentences = [.. interactions, .. pairs.Select(CombineText.Sentence)];
        return sentences.Length == 0
            ? Wrap.Lines($"{stale}No pair with it departs from multiplication beyond chance, or it is not among the {found.Searched.Limits.StrongestFactors} factors that are strongest alone.", width - 2, "").Select(l => PageLine.Of("  " + l))
            : sentences.SelectMany(s => Wrap.Lines(stale + s, width - 2, "  "))
                .Select(l => PageLine.Of("  " + l, stale.Length > 0 ? Ink.Quiet : Ink.Plain));
    }
}
