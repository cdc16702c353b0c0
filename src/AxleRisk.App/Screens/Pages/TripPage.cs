using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Whether the axle lasts the trip that the scenario plans.</summary>
internal sealed class TripPage(Session session, IDialogs dialogs) : StudyPage<TripResult>(session, dialogs)
{
    public override string Name => "Trip";

    public override IReadOnlyList<string> Explanation =>
    [
        "Whether the housing lasts the trip stated in the file, told of vehicles that reach its start unbroken: the damage of the usual use before it counts as well.",
        "By leg: the share that fails on each leg, of those that reach it, and how much of all failures on the trip happen there. A short bad leg may hold most of them.",
        "If the file states a target, the page seeks the highest speed and payload that keep it: each alone, for the whole trip and for the worst leg. A limit holds while all else stays as planned.",
        "Remedies are taken before the start. An interval covers the error of sampling only: it does not make a trip safe. Look at the housing before and on the way.",
        "The study keeps every vehicle in memory: at most 1,000,000 of them. A finished study has the same digits as axlerisk trip with the same seed.",
    ];

    protected override string? Unavailable => Planned is null ? "This scenario plans no trip." : null;

    protected override long DefaultEvaluations => TripAnalysis.DefaultEvaluations;

    protected override string Invitation =>
        "Tells how likely the axle is to fail on the trip, on which leg, and what would keep the target. Press r to run it.";

    protected override string Sampling => RiskAnalysis.DefaultSampling(new LifeModel(Trip.Whole(Session.Document.Scenario)));

    private Trip? Planned => Session.Document.Scenario.Trip;

    private FileExample Missing => new(
        "This scenario plans no trip. A trip is a list of legs driven once. Add lines like these to the end of the file with a text editor, with numbers of your own, and open it again (o):",
        [
            "[trip]", "already_driven_km = 40000   # under the usual use, before the start",
            "target_risk = 0.02          # the risk to be kept; may be left out",
            "[[trip.legs]]", "name = \"plain\"", "km = 900",
            $"like = \"{Session.Document.Scenario.Legs[0].Name}\"   # a road of the usual use",
            "[[trip.legs]]", "name = \"pass\"", "km = 180", "road_class = \"E\"         # or a road of its own", "speed_km_per_h = 18",
        ],
        "docs/scenario-format.md tells of every key; scenarios/desert-crossing.toml is a whole example.");

    public override IReadOnlyList<PageLine> Lines(int width, int height) =>
        Planned is null ? Missing.Lines(width) : base.Lines(width, height);

    protected override long Requested(StudySettings settings) =>
        TripAnalysis.EvaluationsOf(Session.Document.Scenario, settings.Evaluations, Planned?.TargetRisk is not null);

    protected override TripResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<TripResult> publish) =>
        TripAnalysis.Run(model.Scenario, settings, new TripQuestion(), options);

    protected override IReadOnlyList<PageLine> Show(TripResult result, int width, int height) =>
    [
        .. PageLine.FromPrinted(TripText.Lines(result)),
        .. PageLine.FromPrinted(Frame.Assumptions(Trip.Whole(Session.Document.Scenario))),
        .. PageLine.FromPrinted(Frame.Foot(result.Run, TripText.Method(result), Run.ResultElapsed)),
    ];
}
