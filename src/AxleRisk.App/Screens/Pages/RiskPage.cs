using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The failure probability over distance and the lives: the study that follows every edit, drawn while it runs.</summary>
internal sealed class RiskPage(Session session, IDialogs dialogs) : StudyPage<RiskAnswer>(session, dialogs, session.Risk.Run)
{
    /// <summary>From this width on two pictures stand side by side.</summary>
    private const int WideEnough = 100;

    private Interval firstInterval;
    private Task? firstOf;

    public override string Name => "Risk";

    public override IReadOnlyList<string> Explanation =>
    [
        "The failure probability by a distance is the share of all vehicles covered by this scenario whose housing will have begun to crack through by then. It holds for the distributions you stated: it is no measured failure rate.",
        "The 95 % interval covers the error of sampling only, and shrinks as evaluations are made: the bar [==*==] shows it on the scale of the first answer. It does not cover wrong inputs or the limits of the model.",
        "The first picture is the failure probability over distance; the second shows where the lives lie: the share of the vehicles that fails within each further step of distance. The required distance is marked in both.",
        "B10 is the distance by which one vehicle in ten has failed; B1, B5 and B50 likewise. Beta is the failure probability on the scale of standard deviations: 1.28 is 10 %, 2.33 is 1 %, 3.09 is 0.1 %.",
        "The study starts by itself after every edit. r runs it again, s stops and continues it, e sets another number of evaluations. A finished study has the same digits as axlerisk risk with the same seed.",
    ];

    protected override long DefaultEvaluations => Session.Risk.Evaluations;

    protected override string Invitation => "The first answer is on its way.";

    public override void Start() => Session.Risk.Start(Evaluations);

    protected override RiskAnswer Study(LifeModel model, StudySettings settings, RunOptions options, Action<RiskAnswer> publish) =>
        throw new NotSupportedException("the session runs this study");

    protected override IReadOnlyList<PageLine> Show(RiskAnswer answer, int width, int height)
    {
        PageLine[] text = [.. PageLine.FromPrinted(RiskText.Lines(answer.Result))];
        int summary = Array.FindIndex(text, l => l.Length == 0);
        int pictureHeight = Math.Clamp(height - summary - 3, 8, 20);
        return
        [
            .. text[..summary], IntervalLine(answer, Math.Min(width, Layout.Width)), PageLine.Empty,
            .. RiskPicture(answer, width, pictureHeight), PageLine.Empty,
            .. text[(summary + 1)..],
            .. PageLine.FromPrinted(Frame.Assumptions(Session.Document.Scenario)),
            .. PageLine.FromPrinted(Frame.Foot(answer.Result.Run, RiskText.Method(answer.Result), Run.ResultElapsed)),
        ];
    }

    private static IEnumerable<PageLine> RiskPicture(RiskAnswer answer, int width, int height)
    {
        if (width < WideEnough)
        {
            return
            [
                .. Pictures.Lines(RiskPictures.Curve(answer, width, height)), PageLine.Empty,
                .. Pictures.Lines(RiskPictures.Lives(answer, width, Math.Min(height, 12))),
            ];
        }

        int half = (width - 3) / 2;
        return PageLine.Beside(
            Pictures.Lines(RiskPictures.Curve(answer, half, height)), half + 3, Pictures.Lines(RiskPictures.Lives(answer, half, height)));
    }

    /// <summary>The interval on the scale of the first answer of this run.</summary>
    private PageLine IntervalLine(RiskAnswer answer, int width)
    {
        Interval now = answer.Result.AtRequired.Probability;
        if (firstOf != Run.Completion)
        {
            (firstOf, firstInterval) = (Run.Completion, now);
        }

        return RiskPictures.Interval(now, firstInterval, width);
    }
}
