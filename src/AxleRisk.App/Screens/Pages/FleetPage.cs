using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The warranty claims of the fleet that the scenario states.</summary>
internal sealed class FleetPage(Session session, IDialogs dialogs)
    : AnswerPage<NoQuestion, FleetResult>(session, dialogs, StudyBook.Fleet, "Fleet")
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

    private Fleet? Fleet => Session.Document.Scenario.Fleet;

    public override PageFigure? Figure => Fleet is null ? null : FigureOf("claims, of vehicles sold", r => r.ClaimRate, r => r.Run);

    public override IReadOnlyList<PageLine> Lines(int width, int height) =>
        Fleet is null ? Missing.Lines(width) : base.Lines(width, height);
}
