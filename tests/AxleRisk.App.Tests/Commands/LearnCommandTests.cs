using System.Text.Json.Nodes;
using AxleRisk.App.Tests.Schemas;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary><c>axlerisk learn</c>: what it prints, and the mistakes of data files with their places.</summary>
public class LearnCommandTests
{
    private const string Good = "failed_at_km,survived_km,failed_by_km,vehicles,group,axle.wall_mm,axle.wall_mm sd\n"
        + "41000,,,1,north,6.9,0.1\n63000,,,1,north,,\n,52000,60000,1,south,,\n,,30000,1,south,,\n,40000,,300,north,,\n,80000,,180,south,,\n";

    [Fact]
    public void An_answer_is_as_its_schema_says_and_tells_of_disagreement_first()
    {
        (int exit, string text, string error) = Run(Good, "leg,speed_km_per_h,damage_per_km,sd_ln\ngravel,45,3e-7,0.4\n", "-n", "65536", "--json");
        Assert.True(exit == 0, error);
        JsonNode document = JsonNode.Parse(text)!;
        Assert.Empty(Checked.Faults("learn", document));
        Assert.Equal(484, (double)document["records"]!);
        Assert.Equal(4, (double)document["failures"]!);
        Assert.Equal(1, (int)document["gauge_runs"]!);
        Assert.Equal(2, document["misfit"]!["by_group"]!.AsArray().Count);
        JsonNode required = document["failure_probability"]!.AsArray().Single(p => (double)p!["distance_km"]! == 150_000)!;
        Assert.True((double)required["after"]!["high"]! - (double)required["after"]!["low"]!
            < (double)required["before"]!["high"]! - (double)required["before"]!["low"]!);

        // Forty failures in one place, where the scenario scatters them over decades.
        (exit, text, error) = Run("failed_at_km,survived_km,vehicles\n52000,,40\n,90000,300\n", null, "-n", "65536");
        Assert.True(exit == 0, error);
        Assert.StartsWith("DATA AND MODEL DISAGREE", text.Split('\n')[3], StringComparison.Ordinal);
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 80, l));
    }

    // What was learned is written, read again, and the risk of what is written is that after the data.
    [Fact]
    public void The_learned_scenario_runs_and_is_weighed_against_others()
    {
        (string path, string folder) = Written(Good, null);
        string learned = Path.Combine(folder, "learned.toml");
        (int exit, string text, string error) = Cli.Run("learn", path, "-n", "1048576", "--out", learned, "--json");
        Assert.True(exit == 0, error);
        JsonNode document = JsonNode.Parse(text)!;
        Assert.InRange((double)document["effective_share"]!, 0.8, 1);
        Assert.Equal(1001, File.ReadAllLines(Path.Combine(folder, "learned.sample.csv")).Length);
        JsonNode after = document["failure_probability"]!.AsArray().Single(p => (double)p!["distance_km"]! == 150_000)!["after"]!;
        (_, string risk, _) = Cli.Run("risk", learned, "-n", "8192", "--json");
        double probability = (double)JsonNode.Parse(risk)!["failure_probability"]!.AsArray()
            .First(p => (double)p!["distance_km"]! == 150_000)!["estimate"]!;
        Assert.InRange(probability / (double)after["estimate"]!, 0.9, 1.1);

        // It has learned from these data; another scenario of the same data is weighed against the first.
        (exit, _, error) = Cli.Run("learn", learned);
        Assert.Equal(2, exit);
        Assert.Contains("returns.csv is what this scenario has learned from", error, StringComparison.Ordinal);
        string rival = Path.Combine(folder, "rival.toml");
        File.WriteAllText(rival, File.ReadAllText(path).Replace("mean = 1.9, sd = 0.1", "mean = 3.5, sd = 0.1", StringComparison.Ordinal));
        (exit, text, error) = Cli.Run("learn", path, rival, "-n", "65536", "--json");
        Assert.True(exit == 0, error);
        document = JsonNode.Parse(text)!;
        Assert.Empty(Checked.Faults("learn", document));
        JsonNode factor = document["rivals"]![0]!["bayes_factor"]!;
        Assert.True((double)factor["low"]! > 1 && (double)factor["low"]! < (double)factor["estimate"]!);
    }

    [Theory]
    [InlineData("failed_at_km\n-5\n", "returns.csv(2,1): failed_at_km must be a number above 0, not \"-5\"")]
    [InlineData("survived_km,failed_by_km\n60000,50000\n", "returns.csv(2,7): failed_by_km (50000) must be above survived_km (60000)")]
    [InlineData("survived_km,vehicles\n60000,2.5\n", "returns.csv(2,7): vehicles must be a whole number of at least 1, not \"2.5\"")]
    [InlineData("survived_km,axle.wal_mm\n60000,7\n", "returns.csv(1,13): there is no input \"axle.wal_mm\"; did you mean \"axle.wall_mm\"?")]
    [InlineData("survived_km,axle.outside_diameter_mm\n60000,90\n", "returns.csv(1,13): axle.outside_diameter_mm is certain in this scenario")]
    [InlineData("survived_km,axle.lever_arm_mm sd\n60000,7\n", "returns.csv(1,13): \"axle.lever_arm_mm sd\" is the accuracy of a column")]
    [InlineData("survived_km,detail.category\n60000,Z\n", "returns.csv(2,7): detail.category must be \"E\" or \"F\", not \"Z\"")]
    [InlineData("survived_km\n160000\n", "returns.csv(2,1): survived_km (160000) lies beyond the end of the data, field.until_km = 150000")]
    [InlineData("failed_at_km,survived_km\n50000,40000\n", "returns.csv(2,1): a vehicle that failed at a known distance has neither")]
    [InlineData("failed_at_km,survived_km\n,\n", "returns.csv(2,1): this line says nothing of the life")]
    [InlineData("vehicles\n5\n", "returns.csv(1,1): one of the columns failed_at_km, survived_km and failed_by_km must be there")]
    public void A_wrong_record_is_told_with_its_place(string returns, string message)
    {
        (int exit, string text, string error) = Run(returns, null);
        Assert.Equal(2, exit);
        Assert.Equal("", text);
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("leg,damage_per_km,sd_ln\nsnow,1e-6,0.2\n", "gauges.csv(2,1): there is no leg \"snow\"; possible: ")]
    [InlineData("road_class,damage_per_km,sd_ln\nH,1e-6,0.2\n", "gauges.csv(2,1): no leg of the use has a road of class \"H\"")]
    [InlineData("leg,damage_per_km\ngravel,1e-6\n", "gauges.csv(1,1): there is no column \"sd_ln\"")]
    [InlineData("leg,damage_per_km,stress_rms_mpa,sd_ln\ngravel,1e-6,20,0.2\n", "gauges.csv(2,1): one of damage_per_km and stress_rms_mpa must be stated")]
    public void A_wrong_run_is_told_with_its_place(string gauges, string message)
    {
        (int exit, _, string error) = Run("survived_km\n60000\n", gauges);
        Assert.Equal(2, exit);
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_data_or_without_anything_unknown_it_says_what_would_help()
    {
        (int exit, _, string error) = Cli.Run("learn", Cli.Shipped("warranty-clinic-van"));
        Assert.Equal(2, exit);
        Assert.Contains("there are no data; name a file of records under [field]", error, StringComparison.Ordinal);
    }

    private static (int Exit, string Out, string Error) Run(string returns, string? gauges, params string[] options) =>
        Cli.Run(["learn", Written(returns, gauges).Path, .. options]);

    private static (string Path, string Folder) Written(string returns, string? gauges)
    {
        string folder = TemporaryFolder.New();
        File.WriteAllText(Path.Combine(folder, "returns.csv"), returns);
        string data = "\n[field]\nfile = \"returns.csv\"\nuntil_km = 150000\n";
        if (gauges is not null)
        {
            File.WriteAllText(Path.Combine(folder, "gauges.csv"), gauges);
            data += "\n[gauges]\nfile = \"gauges.csv\"\n";
        }

        string path = Path.Combine(folder, "scenario.toml");
        File.WriteAllText(path, File.ReadAllText(Cli.Shipped("warranty-clinic-van")) + data);
        return (path, folder);
    }
}
