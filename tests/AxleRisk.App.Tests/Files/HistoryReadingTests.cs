using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>A history in a scenario file. Lines are counted behind <see cref="Good.Text"/>, which ends with line 30.</summary>
public class HistoryReadingTests
{
    [Fact]
    public void Stretches_follow_each_other_and_the_last_is_open()
    {
        Scenario scenario = Good.Parse(Good.With("tyre_n_per_mm = 300", "tyre_n_per_mm = 300\ndamper_wear_per_100000_km = 0.3") + """
            [[history]]
            until_km = 50_000
            [[history]]
            until_km = 80_000
            change = { "vehicle.tyre_n_per_mm" = { times = 1.2 }, legs.gravel.speed_km_per_h = 40, "detail.category" = "F" }
            shares = [0.5, 0.5]
            [[history]]
            renewed = "dampers"
            change = { "vehicle.payload_kg" = { distribution = "normal", mean = 300, sd = 20 } }
            """).Scenario;
        Assert.Equal([(0, 50_000), (50_000, 80_000), (80_000, double.PositiveInfinity)], scenario.History.Select(s => (s.FromKm, s.ToKm)));
        Assert.Equal([false, false, true], scenario.History.Select(s => s.RenewsDampers));
        Scenario second = Stretches.At(scenario, 50_000), third = Stretches.At(scenario, double.PositiveInfinity);
        Assert.Equal(360, second.Find(Quantities.TyreRate)!.Value.Nominal);
        Assert.Equal(40, second.Find(Quantities.Speed, 1)!.Value.Nominal);
        Assert.Equal(["F"], second.Detail.Categories.AsEnumerable());
        Assert.Equal([0.5, 0.5], second.Legs.Select(l => l.Share));
        Assert.All([Stretches.At(scenario, 0), third], s => Assert.Equal(300, s.Find(Quantities.TyreRate)!.Value.Nominal));
        Assert.Equal(0.75, third.Legs[0].Share, 1e-12);
        Assert.Equal("history.3.vehicle.payload_kg", Assert.Single(new LifeModel(scenario).Factors.Factors, f => Stretches.IsNameOf(f.Name)).Name);
        Assert.Equal("payload in stretch 3", scenario.LabelOf("history.3.vehicle.payload_kg"));
    }

    [Theory]
    [InlineData("until_km = 9\n[[history]]\nuntil_km = 9\n[[history]]\n",
        "a.toml(34,12): history.until_km must be above 9, where the stretch begins, not 9")]
    [InlineData("until_km = 9\n[[history]]\nuntil_km = 5\n[[history]]\n",
        "a.toml(34,12): history.until_km must be above 9, where the stretch begins, not 5")]
    [InlineData("until_km = -3\n[[history]]\n", "a.toml(32,12): history.until_km must be a number above 0, not -3")]
    [InlineData("[[history]]\n", "a.toml(31,1): history.until_km is missing: only the last stretch is open")]
    [InlineData("until_km = 9\n",
        "a.toml(32,1): the last stretch of the history has no until_km: it is open, and says what follows; add a [[history]] behind it")]
    [InlineData("change = { 'vehicle.tyre_n_mm' = 8 }\n", "a.toml(32,12): there is no input \"vehicle.tyre_n_mm\"; did you mean \"vehicle.tyre_n_per_mm\"?")]
    [InlineData("change = { 'required_km' = 8 }\n", "a.toml(32,12): there is no input \"required_km\"")]
    [InlineData("change = { 'fatigue.miner_sum' = 0.5 }\n",
        "a.toml(32,10): fatigue.miner_sum cannot change in a stretch: it is one for the whole life of an axle")]
    [InlineData("change = { 'fatigue.log10_life_scatter' = 0 }\n",
        "a.toml(32,10): fatigue.log10_life_scatter cannot change in a stretch: it is one for the whole life of an axle")]
    [InlineData("change = { 'axle.wall_mm' = -8 }\n", "a.toml(32,29): axle.wall_mm must be a number above 0, not -8")]
    [InlineData("change = { 'axle.wall_mm' = 50 }\n",
        "a.toml(31,1): axle.wall_mm must not be above half of outside_diameter_mm (95) in this stretch")]
    [InlineData("change = {}\n",
        "a.toml(32,10): history.change must be a table of inputs and their values, such as { \"vehicle.tyre_n_per_mm\" = 250 }")]
    [InlineData("change = { 'detail.category' = { distribution = 'choice', values = ['C', 'D'], weights = [0.5, 0.5] } }\n",
        "a.toml(32,10): detail.category must be one word in a stretch, not a choice of several")]
    [InlineData("shares = [1]\n", "a.toml(32,10): history.shares must be 2 numbers, one for each leg of use in the order of the file, not 1")]
    [InlineData("shares = [0.5, 0.6]\n", "a.toml(32,10): history.shares must add up to 1, not 1.1")]
    [InlineData("renewed = 'tyres'\n", "a.toml(32,11): history.renewed lists what is renewed, \"dampers\", not \"tyres\"")]
    [InlineData("renewed = 'dampers'\n",
        "a.toml(32,1): history.renewed = \"dampers\" needs vehicle.damper_wear_per_100000_km: dampers that do not wear need no renewal; another damper stands under change")]
    [InlineData("from_km = 3\n", "a.toml(32,1): unknown key \"from_km\" in history; possible: until_km, change, shares, renewed")]
    public void A_wrong_history_is_named_where_it_stands(string rest, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf(Good.Text + "[[history]]\n" + rest));

    [Fact]
    public void What_is_no_list_or_too_long_is_refused()
    {
        Assert.Equal(["a.toml(1,11): history must be tables, each under [[history]]"], Good.ErrorsOf("history = 3\n" + Good.Text));
        string many = string.Concat(Enumerable.Range(1, 17).Select(i => i == 17 ? "[[history]]\n" : $"[[history]]\nuntil_km = {i}\n"));
        Assert.Contains(Good.ErrorsOf(Good.Text + many), e => e.EndsWith("there are 17 stretches; at most 16 are possible", StringComparison.Ordinal));
    }
}
