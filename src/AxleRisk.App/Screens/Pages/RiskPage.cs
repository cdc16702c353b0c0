using AxleRisk.App.Answers;
using AxleRisk.App.Charts;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The failure probability over distance and the lives: the study that follows every edit, drawn while it runs.</summary>
internal sealed class RiskPage(Session session, IDialogs dialogs) : StudyPage<RiskResult>(session, dialogs, session.Risk.Run)
{
    /// <summary>From this width on two pictures stand side by side.</summary>
    private const int WideEnough = 100;

    private Interval firstInterval;
    private Task? firstOf;

    public override string Name => "Risk";

    public override IReadOnlyList<string> Explanation => StudyBook.Risk.Explanation;

    protected override long DefaultEvaluations => Session.Risk.Evaluations;

    protected override string Invitation => StudyBook.Risk.Invitation;

    public override void Start() => Session.Risk.Start(Evaluations);

    protected override RiskResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<RiskResult> publish) =>
        throw new NotSupportedException("the session runs this study");

    protected override IReadOnlyList<PageLine> Show(RiskResult answer, int width, int height)
    {
        Block[] blocks = [.. RiskBlocks.Of(answer), .. StudyBook.Risk.Notes(Session.Document)];
        PageLine[] main = [.. PageLine.Of(blocks[..1], width)];
        int pictureHeight = Math.Clamp(height - main.Length - 3, 8, 20);
        return
        [
            .. main, IntervalLine(answer, Math.Min(width, Layout.Width)), PageLine.Empty,
            .. RiskPicture(answer, RiskPictures.TargetOf(Session.Document.Scenario), width, pictureHeight), PageLine.Empty,
            .. PageLine.Of(blocks[1..], width), PageLine.Empty,
            .. PageLine.Of(Frame.Foot(
                Frame.Run(answer.Run, RiskText.Method(answer)), Frame.Partial(answer.Run), Run.ResultElapsed)),
        ];
    }

    private static IEnumerable<PageLine> RiskPicture(RiskResult answer, ChartLevel target, int width, int height)
    {
        if (width < WideEnough)
        {
            return
            [
                .. Pictures.Lines(RiskPictures.Curve(answer, target, width, height)), PageLine.Empty,
                .. Pictures.Lines(RiskPictures.Lives(answer, width, Math.Min(height, 12))),
            ];
        }

        int half = (width - 3) / 2;
        return PageLine.Beside(
            Pictures.Lines(RiskPictures.Curve(answer, target, half, height)), half + 3,
            Pictures.Lines(RiskPictures.Lives(answer, half, height)));
    }

    /// <summary>The interval on the scale of the first answer of this run.</summary>
    private PageLine IntervalLine(RiskResult answer, int width)
    {
        Interval now = answer.AtRequired.Probability;
        if (firstOf != Run.Completion)
        {
            (firstOf, firstInterval) = (Run.Completion, now);
        }

        return RiskPictures.Interval(now, firstInterval, width);
    }
}
