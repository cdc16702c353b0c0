using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Measurements;

namespace AxleRisk.App.Screens.Pages;

/// <summary>What knowing more is worth, and which measurement pays.</summary>
internal sealed class MeasurePage(Session session, IDialogs dialogs)
    : PlannedPage<NoQuestion, MeasureResult>(session, dialogs, StudyBook.Measure, "Measure")
{
    public override string ShortName => "Meas";

    public override string Table => "measurements";

    protected override bool IsMissing => Session.Document.Scenario is { Decision: null, Measurements.IsEmpty: true } scenario
        && !MeasureAnalysis.Investigates(scenario);

    protected override string Missing =>
        "This scenario states nothing to measure for. With a measurement that could be made, this page tells how far it is expected to narrow the band of the failure probability; with a decision, what it is worth; with two explanations of a failure, what it is expected to tell of which one holds.";
}
