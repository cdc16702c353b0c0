using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Remedies in a scenario file. Lines are counted behind <see cref="Good.Text"/>, which ends with line 30.</summary>
public class RemedyReadingTests
{
    private const string Head = "[[remedies]]\nname = \"r\"\n";

    [Fact]
    public void Every_kind_of_change_is_read_and_made()
    {
        Scenario scenario = Good.Parse(Good.Text + """
            [[remedies]]
            name = "stiffer and slower"
            cost = 120
            [remedies.change]
            "axle.wall_mm" = { distribution = "normal", mean = 8, sd = 0.3 }
            "vehicle.helper_spring_n_per_mm" = 5
            legs.gravel.speed_km_per_h = { times = 0.5 }
            vehicle.sprung_kg = { times = 0.9 }
            "detail.category" = "D"
            [[remedies]]
            name = "better weld, perhaps"
            change = { "detail.category" = { distribution = "choice", values = ["C", "D"], weights = [0.5, 0.5] }, "use.speed_factor" = { times = 0.8 } }
            """).Scenario;
        Assert.Equal(["stiffer and slower", "better weld, perhaps"], scenario.Remedies.Select(r => r.Name));
        Assert.Equal([120.0, null], scenario.Remedies.Select(r => r.Cost));

        Scenario first = Remedy.Apply(scenario, scenario.Remedies[0]);
        Assert.Equal(0.3, Uncertain(first, "axle.wall_mm").StandardDeviation, 1e-9);
        Assert.Equal(5, Nominal(first, "vehicle.helper_spring_n_per_mm"));
        Assert.Equal((15.0, 30.0),
            (Uncertain(first, "legs.gravel.speed_km_per_h").Minimum, Uncertain(first, "legs.gravel.speed_km_per_h").Maximum));
        Assert.Equal(540, Assert.IsType<Lognormal>(Uncertain(first, "vehicle.sprung_kg")).MedianValue, 1e-9);
        Assert.Equal(["D"], first.Detail.Categories.AsEnumerable());

        // One after the other: the second's category replaces the first's, all else of the first stays.
        Scenario both = Remedy.Apply(first, scenario.Remedies[1]);
        Assert.Equal(["C", "D"], both.Detail.Categories.AsEnumerable());
        Assert.Equal(0.8, Nominal(both, "use.speed_factor"));
        Assert.Equal(5, Nominal(both, "vehicle.helper_spring_n_per_mm"));
        Assert.Equal(6, Nominal(scenario, "axle.wall_mm"));
    }

    [Fact]
    public void A_correlation_of_an_input_made_certain_is_dropped()
    {
        Scenario scenario = Good.Parse(Good.Text
            + "[[correlations]]\nbetween = ['vehicle.sprung_kg', 'legs.gravel.speed_km_per_h']\nspearman = 0.3\n"
            + Head + "change = { 'vehicle.sprung_kg' = 500 }\n").Scenario;
        Assert.Single(scenario.Correlations);
        Assert.Empty(Remedy.Apply(scenario, scenario.Remedies[0]).Correlations);
    }

    [Theory]
    [InlineData("change = { 'axle.wall' = 8 }", "a.toml(33,12): there is no input \"axle.wall\"; did you mean \"axle.wall_mm\"?")]
    [InlineData("change = { axle.wal_mm = 8 }", "a.toml(33,12): there is no input \"axle.wal_mm\"; did you mean \"axle.wall_mm\"?")]
    [InlineData("change = { 'axle.wall_mm' = -8 }", "a.toml(33,29): axle.wall_mm must be a number above 0, not -8")]
    [InlineData("change = { 'axle.wall_mm' = { times = 0 } }", "a.toml(33,39): axle.wall_mm.times must be a number above 0, not 0")]
    [InlineData("change = { 'vehicle.payload_share' = { times = 3 } }",
        "a.toml(33,48): vehicle.payload_share must be a number from 0 to 1, also times 3")]
    [InlineData("change = { 'axle.wall_mm' = { times = 2, tims = 3 } }",
        "a.toml(33,42): unknown key \"tims\" in axle.wall_mm; did you mean \"times\"?")]
    [InlineData("change = { 'axle.wall_mm' = 7, axle.wall_mm = 8 }", "a.toml(33,32): axle.wall_mm is changed twice")]
    [InlineData("change = { 'axle.wall_mm' = { distribution = 'norml', mean = 8, sd = 1 } }",
        "a.toml(33,46): axle.wall_mm: unknown distribution \"norml\"; did you mean \"normal\"?")]
    [InlineData("change = { 'axle.wall_mm' = 50 }",
        "a.toml(31,1): \"r\": axle.wall_mm (50) must not be above half of outside_diameter_mm (95)")]
    [InlineData("change = { 'detail.category' = 'Z' }",
        "a.toml(33,32): DNV-RP-C203 has no category \"Z\"; possible: B1, B2, C, C1, C2, D, E, F, F1, F3, G, W1, W2, W3")]
    [InlineData("change = {}",
        "a.toml(33,10): remedies.change must be a table of inputs and their values, such as { \"axle.wall_mm\" = 8 }")]
    [InlineData("chnge = {}", "a.toml(31,1): remedies.change is missing",
        "a.toml(33,1): unknown key \"chnge\" in remedies; did you mean \"change\"?")]
    [InlineData("cost = 'much'\nchange = { 'axle.wall_mm' = 8 }", "a.toml(33,8): remedies.cost must be a finite number, not \"much\"")]
    [InlineData("change = { 'axle.wall_mm' = 8 }\n[[remedies]]\nname = 'r'\nchange = { 'axle.wall_mm' = 9 }",
        "a.toml(35,8): there are two remedies with the name \"r\"")]
    [InlineData("change = { 'axle.wall_mm' = 30 }\n[[remedies]]\nname = 's'\nchange = { 'axle.outside_diameter_mm' = 50 }",
        "a.toml(34,1): \"s\" together with \"r\": axle.wall_mm (30) must not be above half of outside_diameter_mm (50)")]
    public void A_wrong_remedy_is_named_where_it_stands(string rest, params string[] expected) =>
        Assert.Equal(expected, Good.ErrorsOf(Good.Text + Head + rest + "\n"));

    [Fact]
    public void Remedies_that_are_no_tables_or_too_many_are_refused()
    {
        Assert.Equal(["a.toml(1,12): remedies must be tables, each under [[remedies]]"], Good.ErrorsOf("remedies = 3\n" + Good.Text));
        string many = string.Concat(Enumerable.Range(0, 13)
            .Select(i => $"[[remedies]]\nname = 'r{i}'\nchange = {{ 'axle.wall_mm' = 8 }}\n"));
        Assert.Equal(["a.toml(67,1): there are 13 remedies; at most 12 are possible"], Good.ErrorsOf(Good.Text + many));
    }

    private static Distribution Uncertain(Scenario scenario, string name) =>
        Assert.IsType<Value.Uncertain>(scenario.Inputs.Single(i => i.Name == name).Value).Distribution;

    private static double Nominal(Scenario scenario, string name) => scenario.Inputs.Single(i => i.Name == name).Value.Nominal;
}
