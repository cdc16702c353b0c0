using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AxleRisk.App.Tests.Commands;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The page on histories shows what its scenario holds, and its table what the program says of it.</summary>
public class HistoryPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathTo("docs", "history.md"));

    private static readonly string Scenario = File.ReadAllText(Repository.PathTo("docs", "tutorial", "old-pickup.toml"));

    [Fact]
    public void The_stretches_shown_are_those_of_the_scenario() =>
        Assert.Contains(Regex.Match(Page, "```toml\n(.*?)```", RegexOptions.Singleline).Groups[1].Value, Scenario);

    [Theory]
    [InlineData("with its history", "")]
    [InlineData("the dampers never renewed", "renewed = \"dampers\"\n")]
    [InlineData("as if it had always been used as it is today", "*")]
    public void A_row_of_the_table_is_what_the_program_says(string row, string without)
    {
        string file = Path.Combine(TemporaryFolder.New(), "case.toml");
        File.WriteAllText(file, without switch
        {
            "" => Scenario,
            "*" => Regex.Replace(Scenario, "# The first owner.*?\n(?=\\[trip\\])", "", RegexOptions.Singleline),
            _ => Scenario.Replace(without, "", StringComparison.Ordinal),
        });
        double[] told = [.. Regex.Match(Page, $@"\| {row} \|(.*)\|").Groups[1].Value.Split('|')
            .Select(c => double.Parse(Regex.Match(c, @"[\d.,]+").Value, NumberStyles.Number, CultureInfo.InvariantCulture))];
        Assert.Equal(told[0], (double)Json("base", file)["life_km"]!, 50.0);

        // 16,384 vehicles; the page has those of the usual number.
        JsonNode[] risks = [.. Json("risk", file, "-n", "16384", "--distances", "50000,120000,200000")["failure_probability"]!.AsArray().OfType<JsonNode>()];
        double By(double km) => 100 * (double)risks.Single(r => (double)r["distance_km"]! == km)["estimate"]!;
        Assert.Equal(told[1], By(50_000), 0.01 + (0.02 * told[1]));
        Assert.Equal(told[2], By(120_000), 0.02 * told[2]);
        Assert.Equal(told[3], By(200_000), 0.02 * told[3]);
        Assert.Equal(told[4], 100 * (double)Json("trip", file, "-n", "8192")["failure_probability"]!["estimate"]!, 0.02);
    }

    private static JsonNode Json(params string[] command) => JsonNode.Parse(Cli.Run([.. command, "--json"]).Out)!;
}
