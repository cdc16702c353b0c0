using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The ranking of the factors: the plainest page with a study, and the pattern for the others.</summary>
internal sealed class RankingPage(Session session, IDialogs dialogs) : StudyPage<RankResult>(session, dialogs)
{
    public override string Name => "Ranking";

    public override string ShortName => "Rank";

    public override IReadOnlyList<string> Explanation =>
    [
        "The factors by their share of the failures: how much of the difference between vehicles that fail and vehicles that last each one accounts for, over its real spread. The shares add up to 100 %; they rank factors for this scenario and would change with its distributions.",
        "Alone is what a factor does by itself, with others what it does in all its combinations; where the two differ, it acts together with other factors.",
        "Held is the failure probability if the factor could be fixed at its nominal, its 5 % or its 95 % point: what controlling it would be worth.",
        "Factors whose intervals overlap are a tie: the order between them means nothing yet. More evaluations may part them.",
    ];

    protected override string? Unavailable => Session.Model.Factors.Factors.IsEmpty
        ? "No value of this scenario is uncertain, so there is nothing to rank. Give at least one input a distribution on the page Inputs."
        : null;

    protected override long DefaultEvaluations => RankAnalysis.DefaultEvaluations(Session.Model);

    protected override string Invitation => "Ranks the factors by their share of the failures. Press r to run it.";

    protected override RankResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<RankResult> publish) =>
        RankAnalysis.Run(model, settings, options);

    protected override IReadOnlyList<PageLine> Show(RankResult result, int width, int height) =>
    [
        .. PageLine.FromPrinted(RankText.Lines(result)),
        .. PageLine.FromPrinted(Frame.Foot(result.Run, RankText.Method(result), Run.ResultElapsed, RankText.Speed(result, Run.ResultElapsed))),
    ];
}
