using System.Text.Json.Nodes;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Screens.Pages.Ranking;
using AxleRisk.App.Screens.Pages.Remedies;
using AxleRisk.App.Tests.Screens;
using AxleRisk.App.Tests.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>
/// One quantity has one value: the failure probability by the required distance is that of risk, digit for digit, wherever it
/// stands.
/// </summary>
public sealed class HeadlineTests
{
    private const string Scenario = "warranty-clinic-van";

    [Theory]
    [InlineData]
    [InlineData("--seed", "7")]
    [InlineData("--sampling", "plain")]
    public void Every_command_has_the_figure_of_risk(params string[] options)
    {
        string file = Cli.Shipped(Scenario);
        JsonNode Answer(string command, params string[] more) =>
            JsonNode.Parse(Cli.Run([command, file, .. more, "-n", "2048", "--json", .. options]).Out)!;
        string risk = Answer("risk")["failure_probability_at_required"]!.ToJsonString();
        JsonNode remedies = Answer("remedies"), compare = Answer("compare", Cli.Shipped("desert-crossing"));
        JsonNode[] figures =
        [
            Answer("rank")["failure_probability_at_required"]!, Answer("combine")["failure_probability_at_required"]!,
            remedies["base"]!["failure_probability"]!, compare["cases"]![0]!["failure_probability"]!,
            Answer("fleet")["target_life"]!["failure_probability"]!,
            Answer("causes", "--failed-at", "150000")["failure_before"]!["last_distance"]!,
        ];
        Assert.All(figures, f => Assert.Equal(risk, f.ToJsonString()));

        // A paired change and the headline make the figure of each case.
        double first = (double)JsonNode.Parse(risk)!["estimate"]!;
        Assert.All(remedies["remedies"]!.AsArray().Append(compare["cases"]![1]), c =>
        {
            double p = (double)c!["failure_probability"]!["estimate"]!;
            Assert.Equal(p, first + (double)c["change"]!["difference"]!["estimate"]!, 1e-12);
            Assert.Equal(p, first * (double)c["change"]!["ratio"]!["estimate"]!, 1e-12);
            Assert.InRange(p, (double)c["failure_probability"]!["low"]!, (double)c["failure_probability"]!["high"]!);
        });
    }

    [Fact]
    public void What_is_held_in_the_ranking_goes_by_the_headline_and_own_samples_are_told_as_changes_from_it()
    {
        JsonNode rank = JsonNode.Parse(Cli.Run("rank", Cli.Shipped(Scenario), "-n", "4096", "--json").Out)!;
        double headline = (double)rank["failure_probability_at_required"]!["estimate"]!;
        JsonNode own = rank["own_sample"]!;
        Assert.NotEqual(headline, (double)own["failure_probability"]!["estimate"]!);
        Assert.Equal((double)own["failure_probability"]!["estimate"]!, headline + (double)own["change"]!["estimate"]!, 1e-12);
        Assert.All(rank["factors"]!.AsArray(), f =>
        {
            JsonNode held = f!["failure"]!["pinned"]!;
            Assert.Equal(headline * (double)held["ratio"]!["estimate"]!, (double)held["estimate"]!, 1e-12);
        });
    }

    [Fact]
    public void Without_options_it_is_the_figure_of_risk_without_options()
    {
        string Line(string command) => Cli.Run(command, Cli.Shipped(Scenario), "--json").Out;
        string risk = JsonNode.Parse(Line("risk"))!["failure_probability_at_required"]!.ToJsonString();
        Assert.Equal(risk, JsonNode.Parse(Line("combine"))!["failure_probability_at_required"]!.ToJsonString());
    }

    [Fact]
    public void The_pages_of_the_console_show_the_figure_that_the_risk_study_ends_with()
    {
        using Session session = Opened.Session(Scenario);
        using var combinations = new CombinationsPage(session, new NoDialogs());
        using var ranking = new RankingPage(session, new NoDialogs(), combinations);
        using var remedies = new RemediesPage(session, new NoDialogs());
        Opened.Study(combinations, 2_000);
        Opened.Study(ranking, 4_000);
        Opened.Study(remedies, 2_000);
        RiskHeadline risk = RiskHeadline.Of(session.Model, [session.Model.Scenario.RequiredKm], session.Risk.SettingsOf(session.Model),
            new())[0];
        Assert.Equal(risk.Probability, combinations.Run.Result!.Headline!.Probability);
        Assert.Equal(risk.Probability, ranking.Run.Result!.Headline!.Probability);
        Assert.Equal(risk.Probability, remedies.Run.Result!.None.Probability);
        Assert.Contains($"{RiskText.Question(risk.DistanceKm)}: {RiskText.Answer(risk.Probability)}\n", Opened.Text(combinations), StringComparison.Ordinal);
    }

    [Fact]
    public void The_tables_of_a_report_go_by_its_risk()
    {
        string folder = Path.Combine(TemporaryFolder.New(), "report");
        Assert.Equal(0, Cli.Run([.. ShippedReports.Command(Scenario), "--out", folder]).Exit);
        string[] Cells(string table, Func<string, bool> row) =>
            File.ReadLines(Path.Combine(folder, "tables", table + ".csv")).First(row).Split(',');
        string risk = Cells("risk", l => l.StartsWith("failure_probability,150000,", StringComparison.Ordinal))[2];
        Assert.Contains(risk, Cells("remedies", l => l.StartsWith(",,", StringComparison.Ordinal)));
    }
}
