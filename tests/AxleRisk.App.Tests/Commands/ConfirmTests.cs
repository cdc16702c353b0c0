using System.Text.Json.Nodes;
using AxleRisk.App.Tests.Files;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class ConfirmTests
{
    private static readonly string[] Quick = ["--points", "1", "--km", "0.2"];

    [Fact]
    public void The_text_ends_in_a_line_that_the_scenario_file_takes()
    {
        string text = Cli.Run(["confirm", Cli.Shipped("desert-crossing"), .. Quick, "--bump-clearance", "60"]).Out;
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80 || line.StartsWith("damage_ratio", StringComparison.Ordinal)));
        string flowing = text.Replace("\n  ", " ");
        Assert.Contains("With a bump stop after 60 mm, ", flowing);
        Assert.Contains("Then, with wheel lift-off too, ", flowing);
        Assert.Contains("The trip in the base case: true over computed damage", text);
        string[] lines = [.. text.Split('\n').Where(l => l.StartsWith("damage_ratio = ", StringComparison.Ordinal))];
        Scenario scenario = Good.Parse($"{Good.With("share = 0.25", $"share = 0.25\n{lines[2]}")}\n[fatigue]\n{lines[0]}\n").Scenario;
        Assert.IsType<Value.Uncertain>(scenario.Find(Quantities.DamageRatio)!.Value);
        Assert.IsType<Value.Uncertain>(scenario.Find(Quantities.LegDamageRatio, 1)!.Value);
        Assert.Equal(["asphalt", "washboard", "stone-plain", "dunes"], lines[1..].Select(l => l[(l.IndexOf('#') + 2)..]));
    }

    [Fact]
    public void The_document_has_the_keys_other_programs_rely_on()
    {
        JsonNode document = JsonNode.Parse(Cli.Run(["confirm", Cli.Shipped("desert-crossing"), "--json", .. Quick]).Out)!;
        Assert.Equal(16, (int)document["records"]!);
        Assert.Equal(2, document["points"]!.AsArray().Count);
        JsonNode first = document["points"]![0]!;
        Assert.Equal("base case", (string)first["point"]!);
        Assert.InRange((double)first["true_over_computed"]!["estimate"]!, 0.5, 2);
        Assert.Equal(4, first["legs"]!.AsArray().Count);
        Assert.True((double)document["damage_ratio"]!["median"]! > 0);
        JsonNode washboard = document["damage_ratio"]!["legs"]![1]!;
        double[] simulated = [.. document["points"]!.AsArray().Select(p => (double)p!["legs"]![1]!["fast_over_simulated"]!["estimate"]!)];
        Assert.Equal("washboard", (string)washboard["leg"]!);
        Assert.Equal(1 / Math.Sqrt(simulated[0] * simulated[1]), (double)washboard["median"]!, 1e-9);
    }

    // What the stop does must not be laid to lift-off: wheels with a stop met early, on the scenario's own stop.
    [Fact]
    public void The_scenario_s_own_stop_is_a_step_of_its_own()
    {
        string text = File.ReadAllText(Cli.Shipped("quarry-shuttle"));
        string changed = text.Replace("mean = 105, sd = 5", "mean = 45, sd = 5", StringComparison.Ordinal);
        Assert.NotEqual(text, changed);
        string file = Cli.Temporary(changed);
        JsonNode both = JsonNode.Parse(Cli.Run("confirm", file, "--json", "--points", "0", "--km", "0.2").Out)!;
        JsonNode stop = JsonNode.Parse(Cli.Run("confirm", file, "--json", "--points", "0", "--km", "0.2", "--lift-off", "no").Out)!;
        Assert.Equal(["bump_stop", "lift_off"], both["steps"]!.AsArray().Select(s => (string)s!));
        JsonNode steps = both["points"]![0]!["steps"]!, alone = stop["points"]![0]!;
        Assert.Equal(alone["steps"]!["bump_stop"]!.ToJsonString(), steps["bump_stop"]!.ToJsonString());
        Assert.Equal(alone["limits_over_linear"]!.ToJsonString(), steps["bump_stop"]!.ToJsonString());
        Assert.True((double)steps["bump_stop"]!["estimate"]! > 1.2);
        Assert.InRange((double)steps["lift_off"]!["estimate"]!, 0.9, 1.1);
        Assert.True((double)both["points"]![0]!["fast_strikes"]! > 1.05);
        Assert.Contains("With the scenario's bump stop, the damage is",
            Cli.Run("confirm", file, "--points", "0", "--km", "0.2").Out.Replace("\n  ", " "));
    }

    [Fact]
    public void The_legs_of_a_trip_are_simulated_too()
    {
        JsonNode trip = JsonNode.Parse(
            Cli.Run(["confirm", Cli.Shipped("desert-crossing"), "--json", .. Quick]).Out)!["points"]![1]!["trip"]!;
        Assert.Equal(["coast-road", "north-washboard", "dune-belt", "rocky-pass", "plain-home"],
            trip["legs"]!.AsArray().Select(l => (string)l!["leg"]!));
        Assert.Equal(1, trip["legs"]!.AsArray().Sum(l => (double)l!["damage_share"]!), 1e-9);
        Assert.InRange((double)trip["true_over_computed"]!["estimate"]!, 0.7, 1.4);
    }

    // Four legs and five of the trip: the base case is done after nine parts, and the run is ended inside the next point.
    [Fact]
    public void Ended_early_it_tells_the_points_that_are_done()
    {
        string[] args = ["confirm", Cli.Shipped("desert-crossing"), .. Quick];
        (int code, string text, string error) = Cli.RunUntil(2 + 10, args);
        Assert.Equal(130, code);
        Assert.Empty(error);
        Assert.Contains("PARTIAL: ended early, after 1 of 2 points.", text);
        Assert.DoesNotContain("near failure 1", text);
        JsonNode part = JsonNode.Parse(Cli.RunUntil(2 + 10, [.. args, "--json"]).Out)!,
            whole = JsonNode.Parse(Cli.Run([.. args, "--json"]).Out)!;
        Assert.True((bool)part["partial"]! && !(bool)whole["partial"]!);
        Assert.Equal(whole["points"]![0]!.ToJsonString(), Assert.Single(part["points"]!.AsArray())!.ToJsonString());
    }

    [Fact]
    public void Ended_before_the_base_case_is_done_it_is_one_clear_sentence()
    {
        (int code, string output, string error) = Cli.RunUntil(2 + 3, ["confirm", Cli.Shipped("desert-crossing"), .. Quick]);
        Assert.Equal((130, "", "axlerisk: ended before there was anything to tell\n"), (code, output, error));
    }

    [Theory]
    [InlineData("--points must be a whole number from 0 to 1,000, not \"1.5\"", "--points", "1.5")]
    [InlineData("--km must be a number above 0 and up to 100,000, not \"0\"", "--km", "0")]
    [InlineData("--km must be a number above 0 and up to 100,000, not \"NaN\"", "--km", "NaN")]
    [InlineData("--bump-stop needs --bump-clearance MM, where the stop is met", "--bump-stop", "100")]
    public void A_wrong_option_is_one_clear_error(string message, params string[] options)
    {
        (int code, string output, string error) = Cli.Run(["confirm", Cli.Shipped("desert-crossing"), .. options]);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains(message, error);
    }

    [Fact]
    public void Base_and_risk_hint_at_lift_off_where_it_is_likely()
    {
        string scenario = File.ReadAllText(Cli.Shipped("benchmark-five-legs")).Replace("speed_km_per_h = 25", "speed_km_per_h = 80");
        string path = Cli.Temporary(scenario);
        Assert.Contains("Wheels leave the ground in the base case on track", Cli.Run("base", path).Out);
        Assert.Contains("axlerisk confirm", Cli.Run("risk", path, "-n", "2000").Out);
        Assert.DoesNotContain("Wheels leave the ground", Cli.Run("base", Cli.Shipped("warranty-clinic-van")).Out);
    }
}
