using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The warranty claims of the fleet that the scenario states.</summary>
internal sealed class FleetPage(Session session, IDialogs dialogs) : StudyPage<FleetResult>(session, dialogs)
{
    private static readonly FileExample Missing = new(
        "This scenario states no fleet. A fleet is the vehicles sold under one warranty. Add lines like these to the end of the file with a text editor, with numbers of your own, and open it again (o):",
        [
            "[fleet]", "vehicles = 1500", "distance_km_per_year = { distribution = \"lognormal\", median = 25000, cov = 0.4 }",
            "warranty_months = 24", "warranty_km = 80000",
            "sales_months = 3            # sold evenly over so many months",
            "cost_per_claim = 2600       # in your own unit; may be left out",
            "target_claim_rate = 0.02    # seeks the longest warranty; may be left out",
        ],
        "docs/scenario-format.md tells of every key; scenarios/warranty-clinic-van.toml is a whole example.");

    public override string Name => "Fleet";

    public override IReadOnlyList<string> Explanation =>
    [
        "How many vehicles of the fleet make a warranty claim, and what that costs. Each makes one at most: when its axle fails before its warranty ends, by age or by distance.",
        "Expected is the mean over everything uncertain. The figure to write down is the 95 % range of the number itself: it covers chance between vehicles and what nobody knows of the whole fleet, such as a batch of the steel or an error of the model (knowledge = \"unknown\" in the file).",
        "If the file states a target claim rate, the page seeks the longest warranty that keeps it; if it states a target life, the wall, the tolerance and the weld category that meet it.",
        "The claims by month run from the first sale. The ranges do not cover wrong inputs or the limits of the model.",
        "A target life takes some ten times as many evaluations. A finished study has the same digits as axlerisk fleet with the same seed.",
    ];

    protected override string? Unavailable => Fleet is null ? "This scenario states no fleet." : null;

    protected override long DefaultEvaluations => FleetAnalysis.DefaultEvaluations;

    protected override string Invitation =>
        "Tells how many claims the fleet will make under its warranty, and what would meet its targets. Press r to run it.";

    // As the fleet command: the last of the names is Sobol'.
    protected override string Sampling => SamplingPlan.Names[^1];

    private Fleet? Fleet => Session.Document.Scenario.Fleet;

    public override IReadOnlyList<PageLine> Lines(int width, int height) =>
        Fleet is null ? Missing.Lines(width) : base.Lines(width, height);

    protected override long Requested(StudySettings settings) =>
        Fleet is { } fleet ? FleetAnalysis.ExpectedEvaluations(fleet, settings.Evaluations) : settings.Evaluations;

    protected override FleetResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<FleetResult> publish) =>
        WithHeadlines(model, model.Scenario.Fleet!.TargetKm, options, headlines =>
            FleetAnalysis.Run(model, settings, options) with { Headline = headlines.FirstOrDefault() });

    protected override IReadOnlyList<PageLine> Show(FleetResult result, int width, int height) =>
    [
        .. PageLine.FromPrinted(FleetText.Lines(result)),
        .. PageLine.FromPrinted(Frame.Assumptions(Session.Document.Scenario)),
        .. PageLine.FromPrinted(Frame.Foot(result.Run, FleetText.Method(result.Sampling), Run.ResultElapsed)),
    ];
}
