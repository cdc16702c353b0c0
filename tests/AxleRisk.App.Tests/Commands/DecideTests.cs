using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class DecideTests
{
    [Fact]
    public void The_answer_fits_80_columns_and_names_choice_price_and_doubt()
    {
        (int exit, string output, string error) = Cli.Run("decide", Cli.Shipped("warranty-clinic-van"), "-n", "4096");
        Assert.Equal((0, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        string flat = string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        string[] said = ["The least expected net cost", "best with a probability", "it stays the best up to a price", "no cost here"];
        Assert.All(said, s => Assert.Contains(s, flat, StringComparison.Ordinal));
    }

    [Fact]
    public void The_document_has_the_keys_other_programs_rely_on()
    {
        string csv = Path.Combine(TemporaryFolder.New(), "options.csv");
        JsonNode document = JsonNode.Parse(
            Cli.Run("decide", Cli.Shipped("warranty-clinic-van"), "-n", "4096", "--json", "--csv", csv).Out)!;
        JsonNode[] options = [.. document["options"]!.AsArray().OfType<JsonNode>()];
        Assert.Equal(
            ["as it is", "8 mm tube", "audited weld", "slower on gravel", "no helper spring"], options.Select(o => (string)o["name"]!));
        Assert.Equal(2400 * 85, (double)options[1]["cost"]!);
        Assert.Null(options[0]["difference"]);
        Assert.Equal(1, options.Sum(o => (double)o["probability_best"]!), 1e-9);
        JsonNode best = options.MinBy(o => (double)o["net_cost"]!["estimate"]!)!;
        Assert.Equal((string?)best["name"], (string?)document["best"]);
        Assert.Equal((double)best["cost"]! + (double)best["failure_cost"]!, (double)best["net_cost"]!["estimate"]!, 1e-6);
        Assert.Equal(6, File.ReadAllLines(csv).Length);
    }

    [Fact]
    public void As_it_is_the_vehicles_fail_as_often_as_risk_says()
    {
        JsonNode decide = JsonNode.Parse(Cli.Run("decide", Cli.Shipped("desert-crossing"), "-n", "4096", "--json").Out)!;
        JsonNode risk = JsonNode.Parse(Cli.Run("risk", Cli.Shipped("desert-crossing"), "-n", "4096", "--json").Out)!;
        JsonNode failed = decide["options"]![0]!["failed"]!;
        foreach (string key in new[] { "estimate", "low", "high" })
        {
            Assert.Equal((double)risk["failure_probability_at_required"]![key]!, (double)failed[key]!);
        }

        JsonNode own = decide["own_sample"]!;
        double change = (double)own["failure_probability"]!["estimate"]! - (double)failed["estimate"]!;
        Assert.Equal(change, (double)own["change"]!["estimate"]!, 1e-12);
        Assert.InRange(0, (double)own["change"]!["low"]!, (double)own["change"]!["high"]!);
    }

    [Theory]
    [InlineData("quarry-shuttle", "", "there is no decision; state one under [decision]")]
    [InlineData("benchmark-five-legs", "\n[decision]\nfailure_cost = 9\n", "there is nothing to decide between")]
    [InlineData("quarry-shuttle", "\n[decision]\nfailure_cost = 9\n", "the cost of standard wheels is not known")]
    [InlineData("desert-crossing", "\n[decision]\nover = \"warranty\"\n", "needs a fleet")]
    [InlineData("desert-crossing", "\n[decision]\n[[decision.packages]]\nname = \"a\"\nremedies = \"new dampers\"\n", "what a failure costs is not known")]
    [InlineData("desert-crossing", "\n[decision]\n[[decision.packages]]\nname = \"a\"\nremedies = \"new damper + lighter load\"\n",
        "there is no remedy \"new damper\"; did you mean \"new dampers\"?")]
    [InlineData("desert-crossing", "\n[decision]\nover = \"warranty\"\ndistance_km = 5\n", "decision.distance_km belongs to over = \"distance\"")]
    public void What_is_missing_is_named(string scenario, string more, string expected)
    {
        // The shipped scenarios may state a decision of their own: what stands before it is taken.
        string text = File.ReadAllText(Cli.Shipped(scenario)).Split("\n[decision]")[0];
        string file = Path.Combine(TemporaryFolder.New(), "case.toml");
        File.WriteAllText(file, text + more);
        (int exit, string _, string error) = Cli.Run("decide", file, "-n", "2048");
        Assert.Equal(2, exit);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }
}
