using System.Text.RegularExpressions;
using System.Xml.Linq;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Tests.Screens;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>
/// A report of a scenario to which one of its studies has no answer. That the rest must be had all the same: common practice, no
/// source.
/// </summary>
public sealed class ReportLeftOutTests
{
    private const string Trip =
        """

        [trip]
        already_driven_km = 40000

        [[trip.legs]]
        name = "to-the-quarry"
        km = 300
        like = "gravel"
        """;

    /// <summary>No axle of the benchmark gets this far: no sample agrees with it.</summary>
    private const string Impossible = "\n[evidence]\nsurvived_km = 900000000\n";

    /// <summary>Of two correlated inputs one varies between the vehicles of the fleet, and the other is one value for all.</summary>
    private const string MixedFleet =
        """

        [fleet]
        vehicles = 100
        distance_km_per_year = 20000
        warranty_months = 24
        warranty_km = 60000
        cost_per_claim = 1000

        [[correlations]]
        between = ["axle.wall_mm", "fatigue.stress_factor"]
        spearman = 0.3
        """;

    private readonly string folder = Path.Combine(TemporaryFolder.New(), "out");

    [Fact]
    public void A_fleet_that_cannot_be_answered_says_so_in_its_place_and_the_rest_is_written()
    {
        string scenario = FewFactors.With(MixedFleet);
        (int refused, _, string why) = Cli.Run("fleet", scenario, "-n", "1024");
        Assert.Equal(2, refused);
        string reason = Flat(why)["axlerisk: ".Length..];
        Assert.StartsWith("axle.wall_mm and fatigue.stress_factor are correlated, but one varies", reason, StringComparison.Ordinal);

        string output = Written(scenario);
        Assert.Contains($"NOT MADE: the section \"The fleet under warranty\": {reason}. Written to ", Flat(output),
            StringComparison.Ordinal);
        Assert.Equal(
            [
                "Summary", "Inputs", "Base case, and one factor at a time", "Failure probability over distance", "Which factors decide it",
                "Combined effects", "The fleet under warranty", "Method and limits of validity", "Cautions", "To repeat it",
            ],
            Page().Descendants("h2").Select(h => h.Value));
        Assert.Equal($"The fleet under warranty This section was not made: {reason}.", TextOf("The fleet under warranty"));
        Assert.Contains("The section \"The fleet under warranty\" was not made; it says why in its place.", TextOf("Summary"),
            StringComparison.Ordinal);
        Assert.Contains("axlerisk combine", TextOf("To repeat it"), StringComparison.Ordinal);
        Assert.DoesNotContain("axlerisk fleet", TextOf("To repeat it"), StringComparison.Ordinal);
        Assert.Equal(
            ["base.csv", "combine.csv", "curve.csv", "inputs.csv", "rank.csv", "risk.csv"],
            Directory.GetFiles(Path.Combine(folder, "tables")).Select(Path.GetFileName).Order());
        Assert.Contains("## The fleet under warranty\n\n> This section was not made: ",
            File.ReadAllText(Path.Combine(folder, "report.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_trip_of_a_vehicle_that_ages_is_answered()
    {
        (int exit, string output, _) = Cli.Run("trip", FewFactors.AgeingWith(Trip), "-n", "64");
        Assert.Equal(0, exit);
        Assert.Contains("of the vehicles that set out", Flat(output), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_studies_without_an_answer_are_both_named()
    {
        string output = Flat(Written(FewFactors.With(MixedFleet + Impossible)));
        Assert.Contains("NOT MADE: the section \"Causes, from the evidence\": no answer: of ", output, StringComparison.Ordinal);
        Assert.Contains("NOT MADE: the section \"The fleet under warranty\": axle.wall_mm and fatigue.stress_factor are correlated, but one varies", output, StringComparison.Ordinal);
        Assert.StartsWith("Causes, from the evidence This section was not made: no answer: of ", TextOf("Causes, from the evidence"),
            StringComparison.Ordinal);
        Assert.StartsWith("The fleet under warranty This section was not made: axle.wall_mm and ", TextOf("The fleet under warranty"),
            StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", Page().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void An_error_of_the_scenario_ends_the_report_as_before_and_leaves_no_folder()
    {
        string scenario = FewFactors.With(Trip.Replace("gravel", "no-such-leg", StringComparison.Ordinal));
        (int exit, string output, string error) = Cli.Run("report", scenario, "-n", "100", "--out", folder);
        Assert.Equal((2, ""), (exit, output));
        Assert.Matches(@"case\.toml\(\d+,\d+\): ", error);
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public void The_console_names_what_was_left_out()
    {
        using var session = new Session(
            EditedScenario.Open(FewFactors.With(Impossible)), TimeProvider.System, HeadlessConsole.FewEvaluations);
        using var page = new ReportPage(session, new NoDialogs
        {
            Filling = form =>
            {
                form.Set(0, folder);
                form.Set(1, "200");
            },
        });
        page.Press('r');
        Patience.Until(page.Run.Completion);
        Assert.NotNull(page.Run.Result);
        string text = Flat(string.Join('\n', page.Lines(80, 20).Select(l => l.Text)));
        Assert.Contains("Studies in it: risk, rank, combine.", text, StringComparison.Ordinal);
        Assert.Contains("NOT MADE: the section \"Causes, from the evidence\": no answer: of ", text, StringComparison.Ordinal);
    }

    private string Written(string scenario)
    {
        (int exit, string output, string error) = Cli.Run("report", scenario, "-n", "200", "--out", folder);
        Assert.Equal((0, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80 || line.Contains(folder, StringComparison.Ordinal), line));
        return output;
    }

    private string TextOf(string title)
    {
        XElement section = Page().Descendants("section").Single(s => s.Element("h2")!.Value == title);
        return Flat(string.Join(' ', section.Elements().Select(e => e.Value)));
    }

    private XElement Page()
    {
        string html = File.ReadAllText(Path.Combine(folder, "report.html"));
        return XDocument.Parse(html[html.IndexOf("<html", StringComparison.Ordinal)..]).Root!;
    }

    private static string Flat(string text) => Regex.Replace(text.Replace('\u00a0', ' '), @"\s+", " ").Trim();
}
