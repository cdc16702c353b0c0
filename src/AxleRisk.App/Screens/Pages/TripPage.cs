using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Trips;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Whether the axle lasts the trip that the scenario plans.</summary>
internal sealed class TripPage(Session session, IDialogs dialogs)
    : PlannedPage<TripQuestion, TripResult>(session, dialogs, StudyBook.Trip, "Trip")
{
    public override string Table => "trip";

    public override PageFigure? Figure => IsMissing ? null : FigureOf("fails on the trip", r => r.Probability, r => r.Run);

    protected override bool IsMissing => Session.Document.Scenario.Trip is null;

    protected override string Missing =>
        "This scenario plans no trip. A trip is a list of legs that are driven once, each on a road of the usual use or on one of its own, with a payload of its own where you like.";
}
