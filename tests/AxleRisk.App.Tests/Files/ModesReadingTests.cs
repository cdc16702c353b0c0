using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The inputs of the modes of failure, of the bump stop and of ageing.</summary>
public class ModesReadingTests
{
    private const string Bearing = "[bearing]\nkind = 'roller'\ndynamic_rating_kn = 40\nspread_mm = 70\n";

    [Fact]
    public void Nothing_stated_adds_no_input()
    {
        Scenario plain = Good.Parse(Good.Text).Scenario;
        Assert.Null(plain.Bearing);
        Assert.DoesNotContain(plain.Inputs, i => i.Quantity.Section == Quantities.BearingSection || i.Quantity.Needs is not null
            || i.Quantity.Without is not null);
    }

    [Fact]
    public void What_is_stated_brings_its_defaults()
    {
        Scenario scenario = Good.Parse(Good.With("unsprung_kg = 90", "unsprung_kg = 90\nbump_clearance_mm = 70")
            .Replace("wall_mm = 6", "wall_mm = 6\nyield_mpa = 355") + Bearing).Scenario;
        Assert.Equal(BearingKind.Roller, scenario.Bearing);
        Assert.Equal(300, scenario.Find(Quantities.BumpStopRate)!.Value.Nominal);
        Assert.IsType<Value.Uncertain>(scenario.Find(Quantities.YieldScatter)!.Value);
        Assert.IsType<Value.Uncertain>(scenario.Find(Quantities.BearingScatter)!.Value);
        Assert.Equal(350, scenario.Find(Quantities.RollingRadius)!.Value.Nominal);
    }

    [Fact]
    public void A_mode_that_is_off_is_checked_and_left_out()
    {
        string text = Good.With("wall_mm = 6", "wall_mm = 6\nyield_mpa = 355") + Bearing;
        Scenario off = Good.Parse(text + "[modes]\noff = ['bearing', 'yield']\n").Scenario;
        Assert.Equal(Good.Parse(Good.Text).Scenario.Inputs.Select(i => i.Name), off.Inputs.Select(i => i.Name));
        Assert.Null(off.Bearing);
        Assert.Single(Good.ErrorsOf(text.Replace("spread_mm = 70", "spread_mm = 0") + "[modes]\noff = ['bearing']\n"));
    }

    [Theory]
    [InlineData("kind = 'roller'", "kind = 'needle'", "a.toml(32,8): bearing.kind must be \"ball\" or \"roller\", not \"needle\"")]
    [InlineData("kind = 'roller'\n", "", "a.toml(31,1): bearing.kind is missing")]
    [InlineData("spread_mm = 70\n", "", "a.toml(31,1): bearing.spread_mm is missing")]
    [InlineData("spread_mm = 70", "spred_mm = 70", "a.toml(31,1): bearing.spread_mm is missing",
        "a.toml(34,1): unknown key \"spred_mm\" in bearing; did you mean \"spread_mm\"?")]
    [InlineData("spread_mm = 70", "spread_mm = 70\n[modes]\noff = ['fatigue']",
        "a.toml(36,8): modes.off lists modes of failure to leave out, \"yield\" or \"bearing\", not \"fatigue\"")]
    [InlineData("spread_mm = 70", "spread_mm = 70\n[modes]", "a.toml(35,1): modes.off is missing")]
    public void Mistakes_in_the_bearing_and_the_modes_are_named(string old, string replacement, params string[] expected) =>
        Assert.Equal(expected, Good.ErrorsOf(Good.Text + Bearing.Replace(old, replacement)));

    [Theory]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\nbump_stop_n_per_mm = 300",
        "a.toml(7,1): vehicle.bump_stop_n_per_mm needs a bump_clearance_mm")]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\nbump_clearance_mm = 0",
        "a.toml(7,21): vehicle.bump_clearance_mm must be a number above 0, not 0")]
    [InlineData("wall_mm = 6", "wall_mm = 6\nlargest_load_scatter = 1", "a.toml(15,1): axle.largest_load_scatter needs a yield_mpa")]
    [InlineData("outside_diameter_mm = 95\nwall_mm = 6", "shape = 'given'\nsection_modulus_mm3 = 4e4\ncorrosion_mm_per_100000_km = 1",
        "a.toml(15,1): axle.corrosion_mm_per_100000_km does not belong to shape \"given\", only to \"tube\" or \"box\"")]
    public void A_key_without_what_it_needs_is_an_error(string old, string replacement, string expected) =>
        Assert.Equal([expected], Good.ErrorsWith(old, replacement));
}
