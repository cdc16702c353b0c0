using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Whether the axle lasts the trip that the scenario plans.</summary>
internal sealed class TripPage(Session session, IDialogs dialogs)
    : AnswerPage<TripQuestion, TripResult>(session, dialogs, StudyBook.Trip, "Trip")
{
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

    public override PageFigure? Figure => Planned is null ? null : FigureOf("fails on the trip", r => r.Probability, r => r.Run);

    public override IReadOnlyList<PageLine> Lines(int width, int height) =>
        Planned is null ? Missing.Lines(width) : base.Lines(width, height);
}
