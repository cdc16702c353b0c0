using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages.Combinations;

/// <summary>What factors do together: the worst combinations as sentences, and the pairs as a grid and in words.</summary>
internal sealed class CombinationsPage(Session session, IDialogs dialogs) : StudyPage<CombineResult>(session, dialogs)
{
    /// <summary>Evaluations of the first answers.</summary>
    private static readonly Stages Stages = new(20_000, 100_000);

    private static readonly PairMeasure[] Measures = Enum.GetValues<PairMeasure>();

    private int measure;

    public override string Name => "Combinations";

    public override string ShortName => "Comb";

    public override IReadOnlyList<string> Explanation =>
    [
        "The worst combinations of up to four circumstances: how many of the vehicles that are like this fail, how many times the average that is (the lift), how common such vehicles are, and which part of all failures they make up. A combination is worth acting on where both its lift and its part of the failures are large.",
        "The adverse fifth of a factor is the fifth of vehicles at its worse end. Only what stands out from chance is listed, corrected for the number of combinations that could be made.",
        "The grid shows the pairs of the factors that are strongest alone. g goes on to another figure: the failure probability with both adverse; how many times what they would give if their effects multiplied; the Shapley interaction, which is the part of the variance of failure that belongs to the two together.",
        "Two factors whose effects multiply are no surprise: the ratio is then 1. Above 1 they make each other worse.",
        "First answers of 20 000 and 100 000 evaluations come sooner; the whole run follows and has the digits of axlerisk combine.",
    ];

    public override IReadOnlyList<KeyHint> Keys => Run.Result is null ? base.Keys : [new("g", "another grid"), .. base.Keys];

    public override int Revision => HashCode.Combine(base.Revision, measure);

    protected override string? Unavailable => Session.Model.Factors.Factors.IsEmpty
        ? "No value of this scenario is uncertain, so there is nothing to combine. Give at least one input a distribution on the page Inputs."
        : null;

    protected override long DefaultEvaluations => CombineAnalysis.DefaultEvaluations;

    protected override string Invitation =>
        "Looks for the worst combinations of circumstances and for pairs that do more than multiply. Press r to run it.";

    public override bool Press(PageKey key)
    {
        if (key.Character == 'g' && Run.Result is not null)
        {
            measure = (measure + 1) % Measures.Length;
            return true;
        }

        return base.Press(key);
    }

    protected override long Requested(StudySettings settings) => Stages.Requested(settings.Evaluations);

    protected override CombineResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<CombineResult> publish) =>
        WithHeadline(model, options, headline => Stages.Run(
            settings, 1, options, publish, (s, o) => CombineAnalysis.Run(model, s, new CombineLimits(), o) with { Headline = headline },
                r => r.Run));

    protected override IReadOnlyList<PageLine> Show(CombineResult result, int width, int height)
    {
        IReadOnlyList<PageLine> grid = PairGrid.Lines(result, Measures[measure], Math.Min(width, Layout.Width));
        return
        [
            .. Lines(HeadlineText.Lines(result.RequiredKm, result.Headline, result.Probability)),
            PageLine.Empty,
            .. grid, PageLine.Empty,
            PageLine.Of("The worst combinations", Ink.Heading), .. Lines(CombineText.Worst(result.Combinations, result.Searched)),
            PageLine.Empty,
            PageLine.Of(CombineText.PairsHeading, Ink.Heading), .. Lines(CombineText.Pairs(result)), PageLine.Empty,
            .. Lines(Wrap.Lines(CombineText.Reading(result), Layout.Width, "")), PageLine.Empty,
            .. PageLine.FromPrinted(Frame.Assumptions(Session.Document.Scenario)),
            .. PageLine.FromPrinted(Frame.Foot(result.Run, CombineText.Method(result), Run.ResultElapsed)),
        ];
    }

    private static IEnumerable<PageLine> Lines(IEnumerable<string> printed) => PageLine.FromPrinted(printed);
}
