using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class CausesTests
{
    [Theory]
    [InlineData("broken-housing")]
    [InlineData("broken-housing", "--failed-between", "60000,64000")]
    [InlineData("desert-crossing", "--survived", "20000")]
    [InlineData("warranty-clinic-van", "--failed-at", "90000", "--sampling", "sobol")]
    public void The_answer_fits_80_columns(string scenario, params string[] options)
    {
        (int exit, string output, string error) = Cli.Run(["causes", Cli.Shipped(scenario), "-n", "6000", .. options]);
        Assert.Empty(error);
        Assert.Equal(0, exit);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        Assert.Contains("effective ones", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_document_has_the_keys_other_programs_rely_on()
    {
        string csv = Path.Combine(TemporaryFolder.New(), "figures.csv");
        JsonNode document = JsonNode.Parse(Cli.Run("causes", Cli.Shipped("broken-housing"), "-n", "6000", "--json", "--csv", csv).Out)!;
        Assert.Equal(62_000, (double)document["evidence"]!["failed_at_km"]!);
        Assert.Equal("axle.wall_mm", (string?)document["evidence"]!["measured"]![0]!["factor"]);
        Assert.True((double)document["effective_sample_size"]! >= 200);
        Assert.Equal("nothing unusual", (string?)document["explanations"]!.AsArray()[^1]!["name"]);
        foreach (JsonNode? cause in document["causes"]!.AsArray())
        {
            JsonNode shift = cause!["adverse_tenth"] ?? cause["states"]![0]!;
            Assert.Equal(["estimate", "low", "high"], shift["times"]!.AsObject().Select(x => x.Key));
            Assert.InRange((double)shift["posterior"]!["estimate"]!, 0, 1);
        }

        Assert.True(File.ReadAllLines(csv).Length > 25);
    }

    /// <summary>Sentences that claim no more than was computed: probabilities of a model, and never what brought a failure about.</summary>
    [Fact]
    public void But_for_is_told_with_its_condition_and_claims_no_cause()
    {
        (int exit, string output, string error) = Cli.Run("causes", Cli.Shipped("broken-housing"), "-n", "40000");
        Assert.Equal((0, ""), (exit, error));
        string flat = string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Matches("\"worn dampers\", which given the evidence holds with a probability of [0-9.]+ %. If it held: had the damper condition been "
            + @"drawn from uniform\(low 0.8, high 1.0\), this axle would have passed 200,000 km with a probability of [0-9.]+ % \([0-9.]+ to [0-9.]+\), "
            + "and would still have failed by 62,000 km with a probability", flat);
        Assert.Contains("\"overloaded\": the evidence says next to nothing of it.", flat, StringComparison.Ordinal);
        Assert.DoesNotContain("caused", flat, StringComparison.OrdinalIgnoreCase);
        JsonNode[] told = [.. JsonNode.Parse(Cli.Run("causes", Cli.Shipped("broken-housing"), "-n", "6000", "--json").Out)!["explanations"]!
            .AsArray().OfType<JsonNode>()];
        JsonNode thin = told.Single(e => (string?)e["name"] == "thin tube");
        Assert.Equal(["instead", "would_have_passed_km", "failed_by_km", "probability", "still_failed", "held_and_would_have_passed"],
            thin["but_for"]!.AsObject().Select(k => k.Key));
        Assert.Equal([0.02, 0.05, 0.1, 0.2, 0.3, 0.5], thin["over_priors"]!.AsArray().Select(p => (double)p!["prior"]!));
        Assert.True((double)thin["odds_multiplied"]!["low"]! > 5);

        // Of an axle that has not failed nothing is asked, and that is said.
        string whole = Cli.Run("causes", Cli.Shipped("broken-housing"), "-n", "6000", "--survived", "50000").Out;
        Assert.Contains("But for is not asked: the evidence tells of no failure.", whole, StringComparison.Ordinal);
    }

    [Fact]
    public void An_explanation_that_a_known_state_decides_is_said_to_be_settled()
    {
        string file = Path.Combine(TemporaryFolder.New(), "known.toml");
        File.WriteAllText(file,
            File.ReadAllText(Cli.Shipped("broken-housing")) + "\n[[evidence.known]]\nfactor = \"detail.category\"\nstate = \"W1\"\n");
        (int exit, string output, string error) = Cli.Run("causes", file, "-n", "6000");
        Assert.Equal((0, ""), (exit, error));
        Assert.Matches(@"root not reached +5\.0 % +holds +settled", output);
        Assert.Contains("nothing else unusual", output, StringComparison.Ordinal);
        Assert.Contains("Settled by a state that is known", output, StringComparison.Ordinal);
        Assert.DoesNotContain("root not reached and", output, StringComparison.Ordinal);
        JsonNode[] explanations =
            [.. JsonNode.Parse(Cli.Run("causes", file, "-n", "6000", "--json").Out)!["explanations"]!.AsArray().OfType<JsonNode>()];
        Assert.Equal("holds", (string?)Assert.Single(explanations, e => (string?)e["name"] == "root not reached")["settled"]);
        Assert.True((double)Assert.Single(explanations,
            e => (string?)e["name"] == "nothing else unusual")["posterior"]!["estimate"]! > 0.01);
    }

    [Fact]
    public void The_command_line_overrides_the_life_and_keeps_the_rest()
    {
        JsonNode evidence = JsonNode.Parse(
            Cli.Run("causes", Cli.Shipped("broken-housing"), "-n", "6000", "--json", "--survived", "5e4").Out)!["evidence"]!;
        Assert.Null(evidence["failed_at_km"]);
        Assert.Equal(50_000, (double)evidence["survived_km"]!);
        Assert.Single(evidence["measured"]!.AsArray());
    }

    [Theory]
    [InlineData("--failed-at must be a distance in km, above 0, not \"0\"", "--failed-at", "0")]
    [InlineData("--failed-between must be two distances in km, the second above the first, such as 60000,64000, not \"6,5\"",
        "--failed-between", "6,5")]
    [InlineData("only one of --failed-at, --failed-between and --survived can be true", "--failed-at", "5", "--survived", "6")]
    [InlineData("there is no evidence; state what was found under [evidence], or with --failed-at, --failed-between or --survived")]
    [InlineData("no answer: of 2,000 evaluations only", "-n", "2000", "--failed-at", "0.01")]
    public void What_cannot_be_answered_is_refused(string expected, params string[] options)
    {
        (int exit, string output, string error) = Cli.Run(["causes", Cli.Shipped("benchmark-five-legs"), .. options]);
        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--survived", "90000")]
    [InlineData("--failed-between", "90000,150000")]
    public void A_life_that_ends_before_a_look_is_refused(string option, string km)
    {
        (int exit, _, string error) = Cli.Run("causes", Cli.Shipped("old-truck"), option, km);
        Assert.Equal(2, exit);
        Assert.Contains(
            "[evidence] tells of a look at 118,000 km, when the axle was whole, and this says that it was so at 90,000 km for the last time: "
            + "state 118,000 km or more", error, StringComparison.Ordinal);
    }
}
