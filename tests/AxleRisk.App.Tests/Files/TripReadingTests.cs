using System.Text.RegularExpressions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The trip in a scenario file. Lines are counted behind <see cref="Good.Text"/>, which ends with line 30.</summary>
public class TripReadingTests
{
    private const string Head = "[trip]\n[[trip.legs]]\nname = 'a'\n";

    [Fact]
    public void The_example_of_the_reference_is_read_whole()
    {
        string page = File.ReadAllText(Repository.PathTo("docs", "scenario-format.md"));
        string example = Regex.Match(page, "```toml\n(\\[trip\\].*?)```", RegexOptions.Singleline).Groups[1].Value;
        Scenario scenario = Good.Parse(Good.Text + example).Scenario;
        Trip trip = scenario.Trip!;
        Assert.Equal([new TripLeg("plain", 'C', 1), new TripLeg("pass", 'E')], trip.Legs.AsEnumerable());
        Assert.Equal(0.02, trip.TargetRisk);
        Assert.Equal(["slow on the pass", "a new housing"], trip.Remedies.Select(r => r.Name));
        Assert.Equal(
            [
                "trip.already_driven_km", "trip.pass.corrugated_share", "trip.pass.km", "trip.pass.payload_kg",
                "trip.pass.roughness_within_class",
                "trip.pass.speed_km_per_h", "trip.plain.km",
            ],
            trip.Inputs.Select(i => i.Name).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(scenario.Inputs, i => Trip.IsNameOf(i.Name));
        Assert.Equal(40_000, Trip.Whole(scenario).Find(TripQuantities.AlreadyDriven)!.Value.Nominal);
        Assert.Equal(300, Trip.Whole(scenario).Find(Quantities.Payload, 3)!.Value.Nominal);
    }

    [Fact]
    public void The_reference_has_the_rows_of_the_quantities_of_a_trip()
    {
        string[] lines = File.ReadAllLines(Repository.PathTo("docs", "scenario-format.md"));
        foreach (Quantity q in new[] { TripQuantities.AlreadyDriven, TripQuantities.Distance })
        {
            string standard = q.Default is { } value ? $"{value.Nominal} ({q.DefaultSource})" : "required";
            Assert.Contains($"| `{q.Key}` | {q.Label} | {q.Unit} | {q.Domain.Describe()} | {standard} | {q.Meaning} |", lines);
        }
    }

    [Fact]
    public void A_correlation_with_a_value_of_the_trip_is_the_trips()
    {
        Scenario scenario = Good.Parse(Good.Text + Head + """
            km = 100
            road_class = "D"
            speed_km_per_h = { distribution = "uniform", low = 20, high = 40 }
            [[correlations]]
            between = ["trip.a.speed_km_per_h", "vehicle.sprung_kg"]
            spearman = -0.3
            [[correlations]]
            between = ["legs.gravel.speed_km_per_h", "vehicle.sprung_kg"]
            spearman = -0.3
            """).Scenario;
        Assert.Single(scenario.Correlations);
        Assert.Single(scenario.Trip!.Correlations);
        Assert.Equal(2, Trip.Whole(scenario).Correlations.Length);
    }

    [Theory]
    [InlineData("trip = 3", "a.toml(1,8): trip must be one table under [trip]")]
    public void A_trip_that_is_no_table_is_refused(string first, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf(first + "\n" + Good.Text));

    [Theory]
    [InlineData("[trip]", "a.toml(31,1): the trip has no legs: at least one [[trip.legs]] is needed")]
    [InlineData("[trip]\nlegs = 3", "a.toml(32,8): trip.legs must be tables, each under [[trip.legs]]")]
    [InlineData("[trip]\ntarget_risk = 2\n[[trip.legs]]\nname = 'a'\nkm = 3\nlike = 'road'",
        "a.toml(32,15): trip.target_risk must be a number above 0 and up to 1, not 2")]
    [InlineData("[trip]\nalready_drvn_km = 2\n[[trip.legs]]\nname = 'a'\nkm = 3\nlike = 'road'",
        "a.toml(32,1): unknown key \"already_drvn_km\" in trip; did you mean \"already_driven_km\"?")]
    [InlineData(Head + "like = 'road'", "a.toml(32,1): trip.a.km is missing")]
    [InlineData(Head + "km = -1\nlike = 'road'", "a.toml(34,6): trip.a.km must be a number not below 0, not -1")]
    [InlineData(Head + "km = 1\nlike = 'sand'",
        "a.toml(35,8): trip.a.like must be a leg of the usual use: \"road\" or \"gravel\", not \"sand\"")]
    [InlineData(Head + "km = 1\nlike = 'road'\nroad_class = 'A'",
        "a.toml(36,1): trip.a.road_class is that of the leg it is like; leave out one of the two")]
    [InlineData(Head + "km = 1\nlike = 'road'\nroughness_within_class = 1",
        "a.toml(36,1): trip.a.roughness_within_class belongs to a leg with a road_class, not to one with roughness_1e_6_m3")]
    [InlineData(Head + "km = 1\nlike = 'road'\ncorrugation_rms_mm = 3", "a.toml(36,1): trip.a.corrugation_rms_mm needs a corrugated_share")]
    [InlineData(Head + "km = 1\nspeed_km_per_h = 20",
        "a.toml(32,1): trip.a.road_class or roughness_1e_6_m3 must be stated, there is neither")]
    [InlineData(Head + "km = 1\nlike = 'road'\nshare = 1",
        "a.toml(36,1): unknown key \"share\" in trip.a; a leg of a trip has its distance, km")]
    [InlineData(Head + "km = 1\nlike = 'road'\nsprung_kg = 1",
        "a.toml(36,1): unknown key \"sprung_kg\" in trip.a; it belongs in [vehicle]")]
    [InlineData(Head + "km = 1\nlike = 'road'\n[[trip.legs]]\nname = 'a'\nkm = 1\nlike = 'road'",
        "a.toml(37,8): there are two legs with the name \"a\"")]
    [InlineData(Head + "km = 1\nlike = 'road'\n[[trip.remedies]]\nname = 'r'\nchange = { 'trip.a.speed_km_per_h' = 3 }",
        "a.toml(38,12): there is no input \"trip.a.speed_km_per_h\"; did you mean \"legs.road.speed_km_per_h\"?")]
    [InlineData(Head + "km = 1\nlike = 'road'\n[[remedies]]\nname = 'r'\nchange = { 'trip.a.km' = 3 }",
        "a.toml(38,12): there is no input \"trip.a.km\"; what changes a trip stands under [[trip.remedies]]")]
    [InlineData(Head + "km = 1\nlike = 'road'\n[[remedies]]\nname = 'r'\nchange = { 'axle.wall_mm' = 7 }\n[[trip.remedies]]\nname = 'r'\nchange = { 'trip.a.km' = 3 }", "a.toml(40,8): there are two remedies with the name \"r\"")]
    public void A_wrong_trip_is_named_where_it_stands(string rest, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf(Good.Text + rest + "\n"));
}
