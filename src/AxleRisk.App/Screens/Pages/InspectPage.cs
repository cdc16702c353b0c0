using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Inspections;

namespace AxleRisk.App.Screens.Pages;

/// <summary>What looking for the crack brings, and when to look.</summary>
internal sealed class InspectPage(Session session, IDialogs dialogs)
    : PlannedPage<NoQuestion, InspectResult>(session, dialogs, StudyBook.Inspect, "Inspect")
{
    public override string Table => IsMissing ? "crack" : "inspections";

    public override PageFigure? Figure => IsMissing ? null : FigureOf("failed, with the looks", r => r.WithPlan[^1].Failed, r => r.Run);

    protected override bool IsMissing => Session.Document.Scenario.Crack is null;

    protected override string Missing =>
        "This scenario states no crack. With the depth of the crack of a new part, its depth follows from the life used; with the ways of looking for it, this page tells what each look finds, and when to look.";
}
