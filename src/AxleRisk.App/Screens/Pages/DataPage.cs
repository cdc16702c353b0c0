using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Learning;

namespace AxleRisk.App.Screens.Pages;

/// <summary>What records of the field and gauge runs teach.</summary>
internal sealed class DataPage(Session session, IDialogs dialogs)
    : PlannedPage<LearnQuestion, LearnResult>(session, dialogs, StudyBook.Learn, "Data")
{
    public override string Table => "field";

    public override PageFigure? Figure => IsMissing ? null
        : FigureOf("failed, after the data", r => r.Curve.First(p => p.DistanceKm == Session.Document.Scenario.RequiredKm).After,
            r => r.Run, "band ");

    protected override bool IsMissing =>
        Session.Document.Scenario is { Field.Records.IsEmpty: true, Gauges.Runs.IsEmpty: true };

    protected override string Missing =>
        "This scenario names no data. Records of the field say how far axles got, those still whole included; gauge runs say what damage a road does. Both are CSV files beside the scenario: see docs/commands/learn.md for their columns.";
}
