using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Wrong legs, details and correlations.</summary>
public class UseErrorTests
{
    [Theory]
    [InlineData("name = \"gravel\"", "name = \"grav el\"",
        "a.toml(27,8): the name of a leg is up to 40 letters, digits, - and _, not \"grav el\"")]
    [InlineData("name = \"gravel\"", "name = \"road\"", "a.toml(27,8): there are two legs with the name \"road\"")]
    [InlineData("name = \"gravel\"", "", "a.toml(26,1): use.legs[2].name is missing")]
    [InlineData("share = 0.25", "share = 0.20", "a.toml(20,1): the shares of the legs must add up to 1, not 0.95")]
    [InlineData("share = 0.25", "share = 1.25", "a.toml(28,9): legs.gravel.share must be a number above 0 and up to 1, not 1.25")]
    [InlineData("road_class = \"C\"", "road_class = \"J\"",
        "a.toml(29,14): legs.gravel.road_class must be \"A\", \"B\", \"C\", \"D\", \"E\", \"F\", \"G\" or \"H\", not \"J\"")]
    [InlineData("road_class = \"C\"", "", "a.toml(26,1): legs.gravel.road_class or roughness_1e_6_m3 must be stated, there is neither")]
    [InlineData("road_class = \"C\"", "road_class = \"C\"\nroughness_1e_6_m3 = 3",
        "a.toml(29,1): legs.gravel.road_class or roughness_1e_6_m3 must be stated, not both")]
    [InlineData("roughness_1e_6_m3 = 16", "roughness_1e_6_m3 = 16\nroughness_within_class = 1",
        "a.toml(24,1): legs.road.roughness_within_class belongs to a leg with a road_class, not to one with roughness_1e_6_m3")]
    [InlineData("road_class = \"C\"", "road_class = \"C\"\ncorrugation_rms_mm = 5",
        "a.toml(30,1): legs.gravel.corrugation_rms_mm needs a corrugated_share")]
    [InlineData("road_class = \"C\"", "road_class = \"C\"\nspeed = 5",
        "a.toml(30,1): unknown key \"speed\" in legs.gravel; possible: name, share, road_class, speed_km_per_h, roughness_1e_6_m3, roughness_within_class, corrugated_share, corrugation_wavelength_m, corrugation_rms_mm, damage_ratio, events")]
    public void A_wrong_leg_is_named(string old, string replacement, string expected) =>
        Assert.Equal([expected], Good.ErrorsWith(old, replacement));

    [Fact]
    public void More_than_64_legs_are_refused() =>
        Assert.Equal(
            ["a.toml(217,1): there are 67 legs of use; at most 64 are possible"],
            Good.ErrorsOf(Good.Text + string.Concat(Enumerable.Repeat("[[use.legs]]\nname = \"x\"\nshare = 0.1\n", 65))));

    [Theory]
    [InlineData("catalogue = \"DNV-RP-C203\"", "catalogue = \"DNV-RP-C204\"",
        "a.toml(17,13): unknown catalogue \"DNV-RP-C204\"; did you mean \"DNV-RP-C203\"?")]
    [InlineData("category = \"E\"", "category = \"H\"",
        "a.toml(18,12): DNV-RP-C203 has no category \"H\"; possible: B1, B2, C, C1, C2, D, E, F, F1, F3, G, W1, W2, W3")]
    [InlineData("category = \"E\"", "category = 3", "a.toml(18,12): detail.category must be a category in quotes, not 3")]
    [InlineData("category = \"E\"", "", "a.toml(16,1): detail.category is missing")]
    [InlineData("category = \"E\"", "category = \"E\"\nthickness_exponent = -1",
        "a.toml(19,22): detail.thickness_exponent must be a number from 0 to 1, not -1")]
    [InlineData("category = \"E\"", "category = \"E\"\nenvironment = \"sea\"",
        "a.toml(19,15): detail.environment must be \"air\", \"seawater with protection\" or \"free corrosion\", not \"sea\"")]
    [InlineData("catalogue = \"DNV-RP-C203\"\ncategory = \"E\"",
        "catalogue = \"IIW\"\ncategory = \"FAT 80\"\nenvironment = \"free corrosion\"",
        "a.toml(19,15): detail.environment must be \"air\" with IIW, which tells of no other, not \"free corrosion\"")]
    [InlineData("category = \"E\"",
        "category = \"E\"\nenvironment = { distribution = \"choice\", values = [\"air\", \"sea\"], weights = [0.5, 0.5] }",
        "a.toml(19,59): detail.environment.values must be \"air\", \"seawater with protection\" or \"free corrosion\", not \"sea\"")]
    [InlineData("catalogue = \"DNV-RP-C203\"\ncategory = \"E\"",
        "catalogue = \"IIW\"\ncategory = \"FAT 80\"\nenvironment = { distribution = \"choice\", values = [\"air\", \"free corrosion\"], weights = [0.5, 0.5] }",
        "a.toml(19,59): detail.environment.values must be \"air\" with IIW, which tells of no other, not \"free corrosion\"")]
    [InlineData("category = \"E\"", "category = { distribution = \"normal\", values = [\"E\"], weights = [1] }",
        "a.toml(18,29): detail.category.distribution must be \"choice\", not \"normal\"")]
    [InlineData("category = \"E\"", "category = { distribution = \"choice\", values = [\"E\", \"E\"], weights = [0.5, 0.5] }",
        "a.toml(18,54): detail.category.values has \"E\" twice")]
    [InlineData("category = \"E\"", "category = { distribution = \"choice\", values = [\"E\", \"F\"], weights = [0.5, 0.6] }",
        "a.toml(18,70): detail.category.weights must add up to 1, not 1.1")]
    public void A_wrong_detail_is_named(string old, string replacement, string expected) =>
        Assert.Equal([expected], Good.ErrorsWith(old, replacement));

    [Theory]
    [InlineData("[\"vehicle.sprung_kgs\", \"vehicle.damper_n_s_per_mm\"]", "0.5",
        "a.toml(32,12): there is no input \"vehicle.sprung_kgs\"; did you mean \"vehicle.sprung_kg\"?")]
    [InlineData("[\"vehicle.unsprung_kg\", \"vehicle.damper_n_s_per_mm\"]", "0.5",
        "a.toml(32,12): vehicle.unsprung_kg is certain; only uncertain inputs can be correlated")]
    [InlineData("[\"vehicle.sprung_kg\", \"vehicle.sprung_kg\"]", "0.5",
        "a.toml(32,33): vehicle.sprung_kg cannot be correlated with itself")]
    [InlineData("[\"vehicle.sprung_kg\"]", "0.5",
        "a.toml(32,11): correlations.between must be the names of two inputs, such as [\"vehicle.sprung_kg\", \"vehicle.payload_kg\"]")]
    [InlineData("[\"vehicle.sprung_kg\", \"vehicle.damper_n_s_per_mm\"]", "1",
        "a.toml(33,12): correlations.spearman must be a number above -1 and below 1, not 1")]
    [InlineData("[\"vehicle.sprung_kg\", \"vehicle.damper_n_s_per_mm\"]", "nan",
        "a.toml(33,12): correlations.spearman must be a number above -1 and below 1, not nan")]
    public void A_wrong_correlation_is_named(string between, string spearman, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf($"{Good.Text}[[correlations]]\nbetween = {between}\nspearman = {spearman}\n"));

    [Fact]
    public void A_pair_is_correlated_once()
    {
        const string Pair = "[[correlations]]\nbetween = [\"vehicle.sprung_kg\", \"vehicle.damper_n_s_per_mm\"]\nspearman = 0.5\n";
        const string Turned = "[[correlations]]\nbetween = [\"vehicle.damper_n_s_per_mm\", \"vehicle.sprung_kg\"]\nspearman = 0.5\n";
        Assert.Equal(
            ["a.toml(35,11): vehicle.damper_n_s_per_mm and vehicle.sprung_kg are correlated already"],
            Good.ErrorsOf(Good.Text + Pair + Turned));
    }

    [Fact]
    public void Correlations_that_cannot_hold_at_once_are_an_error_that_names_a_pair()
    {
        string[] errors = Good.ErrorsOf(Good.Text + string.Concat(
            Pair("vehicle.sprung_kg", "vehicle.damper_n_s_per_mm", 0.9),
            Pair("vehicle.sprung_kg", "fatigue.miner_sum", 0.9),
            Pair("vehicle.damper_n_s_per_mm", "fatigue.miner_sum", -0.9)));
        Assert.StartsWith("a.toml(32,1): no factors can have these rank correlations all at once: look first at that of ",
            Assert.Single(errors));
        static string Pair(string a, string b, double rho) => $"\n[[correlations]]\nbetween = [\"{a}\", \"{b}\"]\nspearman = {rho}";
    }

    [Fact]
    public void A_list_of_values_cannot_be_correlated() =>
        Assert.Equal(
            ["a.toml(32,12): vehicle.unsprung_kg is a list of values; only continuous distributions can be correlated"],
            Good.ErrorsOf(Good.With("unsprung_kg = 90",
                "unsprung_kg = { distribution = \"choice\", values = [80, 90], weights = [0.5, 0.5] }")
                + "[[correlations]]\nbetween = [\"vehicle.unsprung_kg\", \"vehicle.sprung_kg\"]\nspearman = 0.5\n"));

    [Fact]
    public void An_input_that_is_wrong_is_not_reported_again_by_its_correlation() =>
        Assert.Equal(
            ["a.toml(5,13): vehicle.sprung_kg must be a number above 0, not 0"],
            Good.ErrorsOf(Good.With("sprung_kg = { distribution = \"lognormal\", median = 600, sd_ln = 0.10 }", "sprung_kg = 0")
                + "[[correlations]]\nbetween = [\"vehicle.sprung_kg\", \"vehicle.damper_n_s_per_mm\"]\nspearman = 0.5\n"));
}
