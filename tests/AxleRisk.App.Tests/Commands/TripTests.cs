using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The command trip.</summary>
public sealed class TripTests
{
    private static readonly string Desert = Cli.Shipped("desert-crossing");

    [Fact]
    public void The_crossing_is_answered_in_80_columns_the_verdict_first()
    {
        (int exit, string output, string error) = Cli.Run("trip", Desert, "-n", "1024");
        Assert.Equal(0, exit);
        Assert.Empty(error);
        string[] lines = output.Split('\n');
        Assert.All(lines, line => Assert.True(line.Length <= 80, line));
        Assert.StartsWith("Failed on the trip, of the vehicles that set out: ", lines[3], StringComparison.Ordinal);
        Assert.StartsWith("  As planned, ", lines[4], StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        Assert.Contains(
            "trip roughness of rocky-pass within its class (trip.rocky-pass.roughness_within_class): class limits",
            string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains("Caution", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_crews_card_is_told_and_written_for_print()
    {
        string page = Path.Combine(TemporaryFolder.New(), "card.html");
        JsonNode card = JsonNode.Parse(Cli.Run("trip", Desert, "-n", "1024", "--json", "--card", page).Out)!["card"]!;
        Assert.True((bool)card["keeps_target"]!);
        Assert.True((double)card["risk"]!["high"]! <= 0.02);
        Assert.Equal(5, card["legs"]!.AsArray().Count);
        double hours = card["legs"]!.AsArray().Sum(l => (double)l!["km"]! / (double)l["speed_km_per_h"]!);
        Assert.Equal((double)card["hours"]!, hours, 1e-9);
        string[] text = File.ReadAllLines(Path.ChangeExtension(page, ".txt"));
        Assert.All(text, line => Assert.True(line.Length <= 80, line));
        Assert.InRange(text.Length, 15, 50); // one page
        string flat = string.Join(' ', text);
        Assert.Contains("rocky-pass", flat, StringComparison.Ordinal);
        Assert.Contains("Notes: 1.8 bar", flat, StringComparison.Ordinal);
        Assert.Contains("<table", File.ReadAllText(page), StringComparison.Ordinal);
    }

    [Fact]
    public void A_card_without_a_target_is_refused_in_words()
    {
        string file = Path.Combine(TemporaryFolder.New(), "none.toml"), page = Path.Combine(TemporaryFolder.New(), "card.html");
        File.WriteAllText(file, File.ReadAllText(Desert).Replace("target_risk = 0.02", "", StringComparison.Ordinal));
        (int exit, string _, string error) = Cli.Run("trip", file, "-n", "64", "--card", page);
        Assert.NotEqual(0, exit);
        Assert.Contains("no card was made: it needs a target", error, StringComparison.Ordinal);
        Assert.False(File.Exists(page));
    }

    [Fact]
    public void The_document_has_the_keys_other_programs_rely_on()
    {
        string csv = Path.Combine(TemporaryFolder.New(), "figures.csv");
        JsonNode document = JsonNode.Parse(Cli.Run("trip", Desert, "-n", "256", "--json", "--csv", csv, "--target", "0.03").Out)!;
        Assert.Equal("trip", (string?)document["command"]);
        Assert.Equal(0.03, (double)document["target_risk"]!);
        Assert.Equal(256, (int)document["evaluations"]!);
        Assert.Equal(["leg", "km", "end_km", "failure_probability", "share", "cumulative"], document["legs"]![0]!.AsObject()
            .Select(x => x.Key));
        Assert.Equal(2 + 5, document["limits"]!.AsArray().Count);
        Assert.Equal(4 + 2, document["remedies"]!.AsArray().Count);
        Assert.Contains(document["remedies"]!.AsArray(), r => (string?)r!["name"] == "a new housing before the start");
        Assert.Equal((double)document["failure_probability"]!["estimate"]!, (double)document["legs"]![4]!["cumulative"]!["estimate"]!);
        string[] written = File.ReadAllLines(csv);
        Assert.True(written.Length > 20);
        Assert.Contains(written, l => l.StartsWith("failure_probability,trip,", StringComparison.Ordinal));
    }

    [Fact]
    public void A_rare_trip_shows_how_it_was_had_and_in_the_document_too()
    {
        string rare = Cli.Shared("""
            title = "A plain road (invented)"
            required_km = 50000
            [vehicle]
            sprung_kg = 600
            unsprung_kg = 90
            spring_n_per_mm = 45
            damper_n_s_per_mm = 4
            tyre_n_per_mm = 300
            [axle]
            lever_arm_mm = 240
            outside_diameter_mm = 95
            wall_mm = 6
            [detail]
            catalogue = "DNV-RP-C203"
            category = "E"
            [[use.legs]]
            name = "gravel"
            share = 1
            roughness_1e_6_m3 = 512
            speed_km_per_h = 50
            [fatigue]
            stress_factor = 1
            damage_ratio = { distribution = "lognormal", median = 1, sd_ln = 0.8 }
            [trip]
            already_driven_km = 200
            [[trip.legs]]
            name = "out"
            km = 300
            like = "gravel"
            [[trip.remedies]]
            name = "new housing"
            change = { "trip.already_driven_km" = 0 }
            """);
        string output = Cli.Run("trip", rare, "-n", "1024").Out;
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains("The likeliest way to fail on out", output, StringComparison.Ordinal);
        Assert.Contains("fewer than 1 in ten thousand million", output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("not resolved", output, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        JsonNode document = JsonNode.Parse(Cli.Run("trip", rare, "-n", "1024", "--json").Out)!;
        Assert.Equal("out", (string?)document["rare_events"]![0]!["leg"]);
        Assert.True((bool)document["failure_probability"]!["resolved"]!);
        JsonNode remedy = document["remedies"]![0]!["failure_probability"]!;
        Assert.False((bool)remedy["resolved"]!);
        Assert.Null(remedy["estimate"]);
        Assert.True((double)remedy["high"]! > 0);
    }

    [Fact]
    public void A_trip_whose_start_no_vehicle_reaches_is_told_so()
    {
        string far = File.ReadAllText(Desert);
        far = far[..far.IndexOf("already_driven_km", StringComparison.Ordinal)] + "already_driven_km = 1e30\n"
            + far[far.IndexOf("target_risk", StringComparison.Ordinal)..];
        (int exit, string output, _) = Cli.Run("trip", Cli.Temporary(far), "-n", "64");
        Assert.Equal(0, exit);
        Assert.Contains("No vehicle of this scenario reaches the start", output, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Counting_gives_the_same_answer_within_its_interval()
    {
        // Without the crew's card, which takes most of the time.
        string file = Path.Combine(TemporaryFolder.New(), "case.toml");
        File.WriteAllText(file, Regex.Replace(File.ReadAllText(Desert), @"\[trip\.card\]\n(.+\n)+", ""));
        JsonNode counted = JsonNode.Parse(Cli.Run("trip", file, "-n", "4096", "--method", "crude", "--target", "1", "--json").Out)!;
        Assert.Equal("crude", (string?)counted["event_method"]);

        // About 2.4 % of 4,096 vehicles: +- 0.24 % is the standard error of plain counting; four of them are allowed.
        JsonNode averaged = JsonNode.Parse(Cli.Run("trip", file, "-n", "1024", "--target", "1", "--json").Out)!;
        Assert.Equal((double)averaged["failure_probability"]!["estimate"]!, (double)counted["failure_probability"]!["estimate"]!, 0.0096);
    }

    [Fact]
    public void What_cannot_be_asked_is_refused()
    {
        Refused("there is no trip; state its legs under [trip] and [[trip.legs]]", "trip", Cli.Shipped("warranty-clinic-van"));
        Refused("--target must be a number above 0 and up to 1, not \"2\"", "trip", Desert, "--target", "2");
        Refused("choose --evaluations 1000000 or fewer", "trip", Desert, "-n", "2000000");
    }

    [Fact]
    public void Limits_are_told_in_words()
    {
        var lever = new TripLever(TripLeverKind.LegSpeed, "pass", "km/h", 30, 6, 60);
        Interval At(double x) => new(x, x - 1, x + 1);
        string Tell(params TripWindow[] windows) => TripWords.Limit(new TripLimit(lever, [.. windows], 6, new Interval(0.1234, 0.1, 0.2)));
        Assert.Equal("none from 6 to 60 km/h keeps it; the best tried, 6 km/h, leaves 12.34 %", Tell());
        Assert.Equal("any up to 60 km/h, the greatest tried, keeps it", Tell(new TripWindow(null, null)));
        Assert.Equal("any up to 38 km/h (37 to 39)", Tell(new TripWindow(null, At(38))));
        Assert.Equal(
            "any up to 20 km/h (19 to 21); also any from 45 km/h (44 to 46) to 60 km/h, the greatest tried; between them the risk is above it",
            Tell(new TripWindow(null, At(20)), new TripWindow(At(45), null)));
        Assert.Equal("any from 12 (11 to 13) to 20 km/h (19 to 21); less is no remedy, for there the risk is above it",
            Tell(new TripWindow(At(12), At(20))));
    }

    private static void Refused(string expected, params string[] args)
    {
        (int exit, string output, string error) = Cli.Run(args);
        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }
}
