using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The commands compare and remedies.</summary>
public sealed class RemedyCommandTests
{
    private static readonly string Van = Cli.Shipped("warranty-clinic-van");

    private static readonly string Benchmark = Cli.Shipped("benchmark-five-legs");

    [Theory]
    [InlineData("warranty-clinic-van")]
    [InlineData("desert-crossing")]
    [InlineData("broken-housing")]
    public void The_remedies_of_every_story_are_answered_in_80_columns(string scenario)
    {
        string output = Answer("remedies", Cli.Shipped(scenario), "-n", "1000");
        Assert.Contains("The best single remedy is ", output, StringComparison.Ordinal);
        Assert.Contains("The best pair is ", output, StringComparison.Ordinal);
        Assert.Contains("as it is", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_remedies_document_has_the_base_every_remedy_and_every_pair()
    {
        JsonNode document = Json("remedies", Van, "-n", "500");
        Assert.Equal(150_000, (double)document["distance_km"]!);
        JsonArray rows = document["remedies"]!.AsArray();
        Assert.Equal(4 + 6, rows.Count);
        JsonNode tube = rows.Single(r => r!["names"]!.AsArray().Count == 1 && (string?)r["names"]![0] == "8 mm tube")!;
        Assert.Equal(85, (double)tube["cost"]!);
        Assert.Equal("axle.wall_mm", (string?)tube["changes"]![0]!["input"]);
        Assert.True((double)tube["change"]!["difference"]!["high"]! < 0);
        Assert.True((bool)tube["change"]!["distinguishable"]!);
        Assert.Null(document["base"]!["change"]);
        Assert.Equal("8 mm tube", (string?)document["best_single"]);
    }

    [Fact]
    public void A_scenario_compared_with_itself_is_not_distinguishable()
    {
        string output = Answer("compare", Benchmark, Benchmark, "-n", "1000");
        Assert.Contains("B is not distinguishable from A", output, StringComparison.Ordinal);
        Assert.Contains("1.000 (1.000..1.000)  not distinguishable", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_scenarios_of_a_comparison_keep_their_order()
    {
        JsonArray cases = Json("compare", Van, Benchmark, Van, "-n", "500", "--distance", "70000")["cases"]!.AsArray();
        Assert.Equal([Van, Benchmark, Van], cases.Select(c => (string?)c!["file"]));
        Assert.Equal(cases[0]!["failure_probability"]!.ToJsonString(), cases[2]!["failure_probability"]!.ToJsonString());
        Assert.Equal(0, (double)cases[2]!["change"]!["difference"]!["high"]!);
        Assert.NotEqual(0, (double)cases[1]!["change"]!["difference"]!["estimate"]!);
    }

    [Fact]
    public void The_distance_is_that_of_the_first_scenario_unless_stated()
    {
        Assert.Equal(50_000, (double)Json("compare", Benchmark, Van, "-n", "200")["distance_km"]!);
        Assert.Equal(150_000, (double)Json("compare", Van, Benchmark, "-n", "200")["distance_km"]!);
    }

    [Theory]
    [InlineData("compare", 3)]
    [InlineData("remedies", 12)]
    public void The_figures_can_be_written_to_a_table(string command, int lines)
    {
        string csv = Path.Combine(TemporaryFolder.New(), "figures.csv");
        string[] files = command == "compare" ? [Van, Benchmark] : [Van];
        Answer([command, .. files, "-n", "200", "--csv", csv]);
        string[] written = File.ReadAllLines(csv);
        Assert.Equal(lines, written.Length);
        Assert.All(written, l => Assert.Equal(written[0].Split(',').Length, l.Split(',').Length));
    }

    [Fact]
    public void What_cannot_be_compared_is_refused()
    {
        Refused("FILES", "compare", Van);
        Refused("nowhere.toml: there is no such file", "compare", Van, "nowhere.toml");
        Refused("--distance must be a number above 0, not \"far\"", "compare", Van, Van, "--distance", "far");
        Refused("there are no remedies to compare", "remedies", Benchmark);
    }

    private static string Answer(params string[] args)
    {
        (int exit, string output, string error) = Cli.Run(args);
        Assert.Empty(error);
        Assert.Equal(0, exit);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        return output;
    }

    private static JsonNode Json(params string[] args) => JsonNode.Parse(Cli.Run([.. args, "--json"]).Out)!;

    private static void Refused(string expected, params string[] args)
    {
        (int exit, string output, string error) = Cli.Run(args);
        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }
}
