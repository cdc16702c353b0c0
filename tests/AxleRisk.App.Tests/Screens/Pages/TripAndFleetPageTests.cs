using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

public sealed class TripAndFleetPageTests
{
    [Fact]
    public void What_is_missing_is_added_by_a_form_of_starting_values_and_taken_back_by_undo()
    {
        using Session session = Open("benchmark-five-legs");
        var accept = new NoDialogs { Filling = _ => { } };
        using var trip = new TripPage(session, accept);
        using var fleet = new FleetPage(session, accept);
        Assert.False(trip.Press('r'));
        Assert.True(trip.Press('a'));
        Assert.True(fleet.Press('a'));
        Scenario scenario = session.Document.Scenario;
        Assert.Equal("leg", Assert.Single(scenario.Trip!.Legs).Name);
        Assert.Equal(1000, scenario.Fleet!.Vehicles);
        Assert.Contains(trip.Keys, k => k.Key == "r");
        session.Undo();
        session.Undo();
        Assert.Null(session.Document.Scenario.Trip);
        Assert.Equal([new KeyHint("a", "add", KeyWorth.Main)], trip.Keys);
    }

    [Fact]
    public void The_trip_page_shows_what_the_trip_command_prints()
    {
        using Session session = Open("desert-crossing");
        using var page = new TripPage(session, new NoDialogs(answer: "64"));
        page.Press('e');
        AssertShows<TripResult>(page, "trip", "desert-crossing", "64");
    }

    [Fact]
    public void The_fleet_page_shows_what_the_fleet_command_prints()
    {
        using Session session = Open("warranty-clinic-van", riskEvaluations: 1024); // the command's --evaluations are those of its risk too
        using var page = new FleetPage(session, new NoDialogs(answer: "1024"));
        page.Press('e');
        AssertShows<FleetResult>(page, "fleet", "warranty-clinic-van", "1024");
    }

    /// <summary>Every line of the command between its head and its last paragraph, which has the time in it, is on the page.</summary>
    private static void AssertShows<T>(StudyPage<T> page, string command, string scenario, string evaluations)
        where T : class
    {
        Patience.Until(page.Run.Completion);
        string[] shown = [.. page.Lines(80, 20).Select(l => l.Text)];
        (_, string output, _) = Cli.Run(command, Cli.Shipped(scenario), "-n", evaluations);
        string[] printed = [.. output.Split('\n').Skip(3).TakeWhile(l => !l.StartsWith("Run: ", StringComparison.Ordinal))];
        Assert.True(printed.Length > 20);
        Assert.Equal(printed, shown.TakeWhile(l => !l.StartsWith("Run: ", StringComparison.Ordinal)));
    }

    private static Session Open(string scenario, long riskEvaluations = HeadlessConsole.FewEvaluations) =>
        new(EditedScenario.Open(Cli.Shipped(scenario)), TimeProvider.System, riskEvaluations);
}
