using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>Every command on a scenario with a history.</summary>
public sealed class HistoryTests
{
    private const string Stretches = """

        [[history]]
        until_km = 50_000

        [[history]]
        change = { "vehicle.tyre_n_per_mm" = { times = 1.15 }, "vehicle.payload_kg" = { distribution = "normal", mean = 700, sd = 40 } }
        """;

    [Theory]
    [InlineData("risk", "warranty-clinic-van")]
    [InlineData("rank", "warranty-clinic-van")]
    [InlineData("combine", "warranty-clinic-van")]
    [InlineData("remedies", "warranty-clinic-van")]
    [InlineData("fleet", "warranty-clinic-van")]
    [InlineData("decide", "warranty-clinic-van")]
    [InlineData("measure", "warranty-clinic-van")]
    [InlineData("trip", "desert-crossing")]
    [InlineData("causes", "broken-housing")]
    public void Every_study_tells_of_it(string command, string scenario)
    {
        string file = File(scenario, Stretches);
        (int exit, string output, string error) = Cli.Run(command, file, "-n", Rows(command));
        Assert.Equal((0, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        Assert.Contains("The history: to 50,000 km as stated; from 50,000 km on tyre rate x 1.15, payload = normal", Flat(output), StringComparison.Ordinal);
        JsonNode document = JsonNode.Parse(Cli.Run(command, file, "-n", Rows(command), "--json").Out)!;
        Assert.Equal([0.0, 50_000], document["history"]!.AsArray().Select(s => (double)s!["from_km"]!));
        Assert.Null(document["history"]![1]!["until_km"]);
        Assert.Equal(2, document["history"]![1]!["changes"]!.AsArray().Count);
        Assert.NotEqual(Without(command, scenario), output);
    }

    [Fact]
    public void Check_base_and_confirm_say_what_they_take()
    {
        string file = File("quarry-shuttle", Stretches);
        Assert.Contains("The history: to 50,000 km as stated;", Flat(Cli.Run("check", file).Out), StringComparison.Ordinal);
        Assert.Contains("history.2.vehicle.payload_kg", Cli.Run("check", file).Out, StringComparison.Ordinal);
        Assert.Contains("those of stretch 2, the last", Flat(Cli.Run("base", file).Out), StringComparison.Ordinal);
        string[] quick = ["--points", "0", "--km", "0.2"];
        Assert.Contains("Simulated is the vehicle of stretch 2 of its history", Flat(Cli.Run(["confirm", file, .. quick]).Out), StringComparison.Ordinal);
        Assert.Contains(
            "Simulated is the vehicle of stretch 1 of its history", Flat(Cli.Run(["confirm", file, "--stretch", "1", .. quick]).Out),
            StringComparison.Ordinal);
        (int exit, string _, string error) = Cli.Run(["confirm", file, "--stretch", "3", .. quick]);
        Assert.NotEqual(0, exit);
        Assert.Contains("the scenario has 2 stretches of history: --stretch must be a whole number from 1 to 2", error, StringComparison.Ordinal);
        Assert.Contains("the scenario has no [[history]]", Cli.Run(["confirm", Cli.Shipped("quarry-shuttle"), "--stretch", "1", .. quick]).Error,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_history_that_changes_nothing_changes_no_digit()
    {
        string file = File("quarry-shuttle", "\n[[history]]\nuntil_km = 20_000\n\n[[history]]\nchange = { \"vehicle.unsprung_kg\" = 110 }\n");
        string[] keys = ["failure_probability", "lives_km_intervals", "damage_by_leg"];
        string[] Of(string path) =>
            JsonNode.Parse(Cli.Run("risk", path, "-n", "4096", "--json").Out)! is var d ? [.. keys.Select(k => d[k]!.ToJsonString())] : [];
        Assert.Equal(Of(Cli.Shipped("quarry-shuttle")), Of(file));
    }

    [Fact]
    public void A_study_in_parts_is_the_same_as_in_one()
    {
        string file = File("quarry-shuttle", Stretches), folder = TemporaryFolder.New();
        string[] parts = [Path.Combine(folder, "1.part"), Path.Combine(folder, "2.part")];
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal(0, Cli.Run("risk", file, "-n", "8192", "--part", $"{i + 1}/2", "--out", parts[i]).Exit);
        }

        string merged = Cli.Run("merge", parts[0], parts[1]).Out;
        string whole = Cli.Run("risk", file, "-n", "8192").Out;
        string Table(string text) => text[text.IndexOf("Failure probability over", StringComparison.Ordinal)..text.IndexOf("Which mode", StringComparison.Ordinal)];
        Assert.Equal(Table(whole), Table(merged));
    }

    // Few rows have the weight of the evidence.
    private static string Rows(string command) => command == "causes" ? "65536" : command == "trip" ? "1024" : "2048";

    private static string Without(string command, string scenario) => Cli.Run(command, Cli.Shipped(scenario), "-n", Rows(command)).Out;

    private static string File(string scenario, string more) => Cli.Shared(System.IO.File.ReadAllText(Cli.Shipped(scenario)) + more);

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
