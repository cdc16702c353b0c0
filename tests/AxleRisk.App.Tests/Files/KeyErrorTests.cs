using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Unknown, missing and misplaced keys and tables. Lines and columns are counted in <see cref="Good.Text"/>.</summary>
public class KeyErrorTests
{
    [Theory]
    [InlineData("required_km = 50000", "required_kms = 50000", "a.toml(1,1): required_km is missing",
        "a.toml(2,1): unknown key \"required_kms\"; did you mean \"required_km\"?")]
    [InlineData("[vehicle]", "[vehicel]", "a.toml(4,1): unknown table \"vehicel\"; did you mean \"vehicle\"?",
        "a.toml(31,1): [vehicle] is missing; it must state sprung_kg, unsprung_kg, spring_n_per_mm, damper_n_s_per_mm and tyre_n_per_mm")]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\n  payload = 3",
        "a.toml(7,3): unknown key \"payload\" in vehicle; did you mean \"payload_kg\"?")]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\nwall_mm = 3",
        "a.toml(7,1): unknown key \"wall_mm\" in vehicle; it belongs in [axle] or [[sections]]")]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\nspeed_km_per_h = 3",
        "a.toml(7,1): unknown key \"speed_km_per_h\" in vehicle; it belongs in [[use.legs]]")]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\ndamage_ratio = 3",
        "a.toml(7,1): unknown key \"damage_ratio\" in vehicle; it belongs in [[use.legs]] or [fatigue]")]
    [InlineData("unsprung_kg = 90", "", "a.toml(4,1): vehicle.unsprung_kg is missing")]
    [InlineData("title = \"A tube on gravel\"", "title = \"\"", "a.toml(1,9): title must be one line of up to 200 characters; it is empty")]
    [InlineData("title = \"A tube on gravel\"", "title = \"a\\u001b[31m\"",
        "a.toml(1,9): title must be one line of up to 200 characters; it has a control character (U+001B)")]
    [InlineData("title = \"A tube on gravel\"", "title = \"a\\nb\"",
        "a.toml(1,9): title must be one line of up to 200 characters; it has a line break")]
    [InlineData("title = \"A tube on gravel\"", "title = 'x'\nabout = 3", "a.toml(2,9): about must be a text in quotes, not 3")]
    [InlineData("[axle]", "[[axle]]", "a.toml(11,1): axle must be one table under [axle]")]
    [InlineData("wall_mm = 6", "wall_mm = 6\nwidth_mm = 4",
        "a.toml(15,1): axle.width_mm does not belong to shape \"tube\", only to \"box\"")]
    [InlineData("wall_mm = 6", "shape = \"pipe\"", "a.toml(14,9): axle.shape must be \"tube\", \"box\" or \"given\", not \"pipe\"")]
    [InlineData("wall_mm = 6", "wall_mm = 48", "a.toml(14,11): axle.wall_mm (48) must not be above half of outside_diameter_mm (95)")]
    [InlineData("[detail]", "[use]\nmix_knowledge = 'varies'\n[detail]", "a.toml(17,1): use.mix_knowledge needs a mix_concentration")]
    [InlineData("[detail]", "[fatigue]\ncounting = 'rainflow'\n[detail]",
        "a.toml(17,12): fatigue.counting must be \"dirlik\", \"narrow-band\" or \"tovo-benasciutti\", not \"rainflow\"")]
    public void A_wrong_key_or_table_is_named_where_it_stands(string old, string replacement, params string[] expected) =>
        Assert.Equal(expected, Good.ErrorsWith(old, replacement));

    [Fact]
    public void A_section_modulus_knows_no_corrosion() =>
        Assert.Equal(
            ["a.toml(15,1): axle.corrosion_loss_mm does not belong to shape \"given\", only to \"tube\" or \"box\""],
            Good.ErrorsWith("outside_diameter_mm = 95\nwall_mm = 6", "shape = 'given'\nsection_modulus_mm3 = 4e4\ncorrosion_loss_mm = 1"));

    [Fact]
    public void An_empty_file_says_what_is_missing() =>
        Assert.Equal(
            [
                "a.toml(1,1): title is missing",
                "a.toml(1,1): required_km is missing",
                "a.toml(1,1): [vehicle] is missing; it must state sprung_kg, unsprung_kg, spring_n_per_mm, damper_n_s_per_mm and tyre_n_per_mm",
                "a.toml(1,1): [axle] is missing; it must state lever_arm_mm, outside_diameter_mm and wall_mm",
                "a.toml(1,1): [detail] is missing; it must state catalogue and category",
                "a.toml(1,1): there are no legs of use: at least one [[use.legs]] is needed",
            ],
            Good.ErrorsOf(""));

    [Fact]
    public void Several_errors_come_in_the_order_of_the_file() =>
        Assert.Equal(
            [
                "a.toml(2,15): required_km must be a number above 0, not -5",
                "a.toml(9,17): vehicle.tyre_n_per_mm must be a number above 0, not \"hard\"",
                "a.toml(24,18): legs.road.speed_km_per_h must be a number above 0, not 0",
            ],
            Good.ErrorsOf(Good.Text
                .Replace("speed_km_per_h = 80", "speed_km_per_h = 0")
                .Replace("required_km = 50000", "required_km = -5")
                .Replace("tyre_n_per_mm = 300", "tyre_n_per_mm = \"hard\"")));
}
