using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

public sealed class TripAndFleetPageTests
{
    [Fact]
    public void What_a_page_says_to_add_to_the_file_makes_it_a_scenario_with_a_trip_and_a_fleet()
    {
        using Session session = Open("benchmark-five-legs");
        string example = Example(new TripPage(session, new NoDialogs())) + "\n" + Example(new FleetPage(session, new NoDialogs()));
        string path = Cli.Temporary(File.ReadAllText(Cli.Shipped("benchmark-five-legs")) + "\n" + example);
        Scenario scenario = ScenarioReader.ReadFile(path).Scenario;
        Assert.Equal(2, scenario.Trip!.Legs.Length);
        Assert.Equal(1500, scenario.Fleet!.Vehicles);
    }

    [Fact]
    public void A_scenario_without_a_trip_has_nothing_to_run_on_that_page()
    {
        using Session session = Open("benchmark-five-legs");
        using var page = new TripPage(session, new NoDialogs());
        Assert.False(page.Press('r'));
        Assert.Empty(page.Keys);
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

    private static string Example(Page page) =>
        string.Join('\n', page.Lines(80, 20).Where(l => l.Pieces.Any(p => p.Ink == Ink.Strong)).Select(l => l.Text.Trim()));

    private static Session Open(string scenario, long riskEvaluations = HeadlessConsole.FewEvaluations) =>
        new(EditedScenario.Open(Cli.Shipped(scenario)), TimeProvider.System, riskEvaluations);
}
