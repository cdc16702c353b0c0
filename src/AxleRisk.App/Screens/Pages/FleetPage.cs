using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Fleets;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The warranty claims of the fleet that the scenario states.</summary>
internal sealed class FleetPage(Session session, IDialogs dialogs)
    : PlannedPage<NoQuestion, FleetResult>(session, dialogs, StudyBook.Fleet, "Fleet")
{
    public override string Table => "fleet";

    public override PageFigure? Figure => IsMissing ? null : FigureOf("claims, of vehicles sold", r => r.ClaimRate, r => r.Run);

    protected override bool IsMissing => Session.Document.Scenario.Fleet is null;

    protected override string Missing =>
        "This scenario states no fleet. A fleet is the vehicles of one model that are sold under one warranty: how many, what each drives in a year, and what the warranty promises.";
}
