using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The old truck: one file gives a go or no go, where to look and what is left.</summary>
public sealed class SeenVehicleTests
{
    private static readonly string Truck = File.ReadAllText(Cli.Shipped("old-truck"));

    [Fact]
    public void The_trip_says_go_or_no_go_where_to_look_and_what_is_left()
    {
        string card = Path.Combine(TemporaryFolder.New(), "card.html");
        (int exit, string output, string error) = Cli.Run("trip", Cli.Shipped("old-truck"), "-n", "1024", "--card", card);
        Assert.True(exit == 0, error);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        string told = string.Join(' ', output.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("above the target of 0.5 %: no go as planned.", told, StringComparison.Ordinal);
        Assert.Contains(
            "Given that it has come 140,000 km whole and dye penetrant at 118,000 km found nothing; had nothing been seen, ", told,
            StringComparison.Ordinal);
        Assert.Contains("Go with one look (dye penetrant) before to-the-border, if a vehicle found cracked goes no further: ", told,
            StringComparison.Ordinal);
        string text = string.Join(' ', File.ReadAllText(Path.ChangeExtension(card, ".txt"))
            .Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("For the vehicle that was seen: it has come 140,000 km whole", text, StringComparison.Ordinal);
        Assert.Contains("at this card's speeds it finds a crack in ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_documents_say_what_was_seen()
    {
        JsonNode trip = JsonNode.Parse(Cli.Run("trip", Cli.Shipped("old-truck"), "-n", "1024", "--json").Out)!;
        Assert.Equal(140_000, (double)trip["seen"]!["survived_km"]!);
        Assert.Equal("dye penetrant", (string?)trip["seen"]!["looks"]![0]!["method"]);
        Assert.True((double)trip["seen"]!["failure_probability_unseen"]!["low"]! > (double)trip["failure_probability"]!["high"]!);
        Assert.True((double)trip["seen"]!["effective_vehicles"]! > 500);
        Assert.Null(trip["looks"]!.AsArray().Last()!["before_leg"]);
        JsonNode inspect = JsonNode.Parse(Cli.Run("inspect", Cli.Shipped("old-truck"), "-n", "1024", "--json").Out)!;
        Assert.Equal(140_000, (double)inspect["from_km"]!);
        Assert.All(inspect["with_plan"]!.AsArray(), d => Assert.True((double)d!["distance_km"]! >= 140_000));
        Assert.True((double)inspect["plan"]!["saves"]!["low"]! > 0);
    }

    /// <summary>One figure for one question: without a look it is that of risk, digit by digit.</summary>
    [Fact]
    public void A_new_vehicle_without_a_look_has_the_figure_of_risk()
    {
        JsonNode risk = JsonNode.Parse(Cli.Run("risk", Cli.Shipped("desert-crossing"), "-n", "2000", "--json").Out)!;
        JsonNode inspect = JsonNode.Parse(Cli.Run("inspect", Cli.Shipped("desert-crossing"), "-n", "2000", "--json").Out)!;
        JsonNode told = risk["failure_probability"]!.AsArray().First(d => (double)d!["distance_km"]! == 4000)!;
        JsonNode without = inspect["without_plan"]!.AsArray().Last()!["failure_probability"]!;
        foreach (string end in (string[])["estimate", "low", "high"])
        {
            Assert.Equal((double)(told[end] ?? told["failure_probability"]![end])!, (double)without[end]!, 1e-12);
        }
    }

    [Theory]
    [InlineData("already_driven_km = 140000\n", "", "trip.already_driven_km is 0, and [evidence] says that the vehicle has come 140,000 km whole")]
    [InlineData("already_driven_km = 140000", "already_driven_km = 120000", "trip.already_driven_km is 120,000, and [evidence] says")]
    [InlineData(
        "already_driven_km = 140000", "already_driven_km = { distribution = \"uniform\", low = 130000, high = 150000 }",
        "trip.already_driven_km may be as little as 130,000, and [evidence] says")]
    public void A_trip_does_not_begin_before_what_was_seen(string from, string to, string expected)
    {
        string text = Truck.Replace(from, to, StringComparison.Ordinal);
        string path = Cli.Temporary(text.Replace("\"trip.already_driven_km\" = 0", "\"axle.lever_arm_mm\" = 230", StringComparison.Ordinal));
        (int exit, string output, string error) = Cli.Run("trip", path);
        Assert.Equal((2, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_lies_ahead_of_a_vehicle_that_has_come_further()
    {
        string path = Cli.Temporary(Truck.Replace("required_km = 165000", "required_km = 130000", StringComparison.Ordinal));
        (int exit, _, string error) = Cli.Run("inspect", path);
        Assert.Equal(2, exit);
        Assert.Contains("the vehicle has already come 140,000 km ([evidence]) and required_km is 130,000", error, StringComparison.Ordinal);
    }
}
