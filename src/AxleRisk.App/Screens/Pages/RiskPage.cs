using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The failure probability over distance and the lives: the study that follows every edit, drawn while it runs.</summary>
internal sealed class RiskPage(Session session, IDialogs dialogs) : StudyPage<RiskResult>(session, dialogs, session.Risk.Run)
{
    public override string Name => "Risk";

    public override IReadOnlyList<string> Explanation =>
    [
        "The failure probability by a distance is the share of all vehicles covered by this scenario whose housing will have begun to crack through by then. It holds for the distributions you stated: it is no measured failure rate.",
        "The 95 % interval covers the error of sampling only, and shrinks as evaluations are made. It does not cover wrong inputs or the limits of the model.",
        "B10 is the distance by which one vehicle in ten has failed; B1, B5 and B50 likewise. Beta is the failure probability on the scale of standard deviations: 1.28 is 10 %, 2.33 is 1 %, 3.09 is 0.1 %.",
        "The study starts by itself after every edit. r runs it again, s stops and continues it, e sets another number of evaluations. A finished study has the same digits as axlerisk risk with the same seed.",
    ];

    protected override long DefaultEvaluations => Session.Risk.Evaluations;

    protected override string Invitation => "The first answer is on its way.";

    public override void Start() => Session.Risk.Start(Evaluations);

    protected override RiskResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<RiskResult> publish) =>
        throw new NotSupportedException("the session runs this study");

    protected override IReadOnlyList<PageLine> Show(RiskResult result, int width, int height) =>
    [
        .. PageLine.FromPrinted(RiskText.Lines(result)),
        .. PageLine.FromPrinted(Frame.Assumptions(Session.Document.Scenario)),
        .. PageLine.FromPrinted(Frame.Foot(result.Run, RiskText.Method(result), Run.ResultElapsed)),
    ];
}
