using System.Text.Json.Nodes;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The command fleet.</summary>
public sealed class FleetTests
{
    private const string Small = "[fleet]\nvehicles = 200\ndistance_km_per_year = 3e4\nwarranty_months = 36\nwarranty_km = 1e5\n";

    private static readonly string Van = Cli.Shipped("warranty-clinic-van");

    [Fact]
    public void The_answer_begins_with_the_figure_to_write_down()
    {
        (int exit, string output, string error) = Cli.Run("fleet", Van, "-n", "2048");
        Assert.Equal((0, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.StartsWith("Expected warranty claims, and their 95 % band: ", output.Split('\n')[3], StringComparison.Ordinal);
        Assert.Contains("Write down: with a probability of 95 % this fleet will make", Words(output), StringComparison.Ordinal);
        Assert.Contains("outer draws of what is unknown", Words(output), StringComparison.Ordinal);
        Assert.Contains("smallest nominal wall, mm (now 7)", output, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_document_has_the_figures()
    {
        JsonNode document = JsonNode.Parse(Cli.Run("fleet", Van, "-n", "2048", "--json").Out)!;
        Assert.Equal(2400, (long)document["vehicles"]!);
        Assert.Equal(48, document["months"]!.AsArray().Count);
        Assert.Equal((double)document["claims"]!["expected"]!["estimate"]!,
            (double)document["months"]![47]!["so_far"]!["expected"]!["estimate"]!, 1e-6);
        Assert.Equal(["average", "ninety_percent"], document["target_life"]!["limits"]!.AsArray().Select(l => (string?)l!["basis"]));
        Assert.Equal("found", (string?)document["target_life"]!["limits"]![0]!["wall_mm"]!["outcome"]);
        Assert.Equal(2048 + ((int)document["two_levels"]!["designs"]! * 1024), (long)document["evaluations"]!);
    }

    [Fact]
    public void The_figures_can_be_written_to_a_table()
    {
        string csv = Path.Combine(TemporaryFolder.New(), "figures.csv");
        Cli.Run("fleet", Van, "-n", "1024", "--csv", csv);
        string[] written = File.ReadAllLines(csv);
        Assert.Equal(1 + 3 + (2 * 48) + 4 + 6, written.Length);
        Assert.All(written, l => Assert.Equal(7, l.Split(',').Length));
    }

    [Fact]
    public void A_fleet_without_targets_or_cost_is_answered_too()
    {
        (int exit, string output, _) = Cli.Run("fleet",
            Cli.Temporary(Good.Text.Replace(", knowledge = \"unknown\"", "") + "[fatigue]\nstress_factor = 1\n" + Small), "-n", "1024");
        Assert.Equal(0, exit);
        Assert.DoesNotContain("Target", output, StringComparison.Ordinal);
        Assert.Contains("No factor is marked as unknown", Words(output), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_fleet_there_is_nothing_to_ask()
    {
        (int exit, string output, string error) = Cli.Run("fleet", Cli.Shipped("benchmark-five-legs"));
        Assert.Equal((2, ""), (exit, output));
        Assert.Contains("there is no fleet; state one under [fleet]", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_evaluations_are_refused()
    {
        (int exit, _, string error) = Cli.Run("fleet", Van, "-n", "100");
        Assert.Equal(2, exit);
        Assert.Contains("--evaluations", error, StringComparison.Ordinal);
    }

    /// <summary>The text without its line breaks.</summary>
    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
