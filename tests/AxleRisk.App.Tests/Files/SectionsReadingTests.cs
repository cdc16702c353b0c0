using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Further checked sections: what they bring, what they share with the first, and mistakes in them.</summary>
public class SectionsReadingTests
{
    private const string Seat = """
        [[sections]]
        name = "seat"
        lever_arm_mm = 300
        outside_diameter_mm = 100
        wall_mm = 7
        catalogue = "DNV-RP-C203"
        category = "F"

        """;

    [Fact]
    public void A_section_has_its_own_inputs_with_the_firsts_defaults()
    {
        Scenario scenario = Good.Parse(Good.Text + Seat).Scenario;
        CheckedSection seat = Assert.Single(scenario.Sections);
        Assert.Equal((SectionShape.Tube, "F"), (seat.Shape, seat.Detail.Category.Only));
        Assert.Equal(
            [
                "sections.seat.lever_arm_mm", "sections.seat.outside_diameter_mm", "sections.seat.wall_mm",
                "sections.seat.stress_concentration", "sections.seat.stress_factor", "sections.seat.life_scatter",
            ],
            scenario.Inputs.Where(i => i.Section == "seat").Select(i => i.Name));
        Assert.Equal("wall thickness of seat", scenario.LabelOf("sections.seat.wall_mm"));
        Assert.Equal("weld category of seat", scenario.LabelOf("sections.seat.category"));
        Assert.Equal(
            Quantities.StressFactor.Default, scenario.Find(Quantities.OfSection("stress_factor")!, seat)!.Value);

        // CoV 0.3 of the Miner sum and 0.20 of log10 N: variances of ln add.
        var scatter = (Lognormal)((Value.Uncertain)scenario.Find(Quantities.SectionLifeScatter, seat)!.Value).Distribution;
        Assert.Equal(1, scatter.MedianValue, 1e-12);
        Assert.Equal(Math.Sqrt(Math.Log(1.09) + Math.Pow(0.2 * Math.Log(10), 2)), scatter.StandardDeviationOfLn, 1e-12);
        Assert.Equal(6, scenario.Find(Quantities.Wall)!.Value.Nominal);
    }

    [Fact]
    public void Its_scatter_follows_what_the_first_section_states()
    {
        Scenario stated = Good.Parse(Good.Text + Seat + "[fatigue]\nminer_sum = 0.5\nlog10_life_scatter = { distribution = 'normal', mean = 0.1, sd = 0.15 }\n").Scenario;
        var scatter = (Lognormal)((Value.Uncertain)stated.Find(Quantities.SectionLifeScatter, stated.Sections[0])!.Value).Distribution;
        Assert.Equal(0.5 * Math.Pow(10, 0.1), scatter.MedianValue, 1e-12);
        Assert.Equal(0.15 * Math.Log(10), scatter.StandardDeviationOfLn, 1e-12);
        Scenario certain = Good.Parse(Good.Text + Seat + "[fatigue]\nminer_sum = 0.5\nlog10_life_scatter = 0\n").Scenario;
        Assert.Equal(new Value.Certain(0.5), certain.Find(Quantities.SectionLifeScatter, certain.Sections[0])!.Value);
        string curve = Seat.Replace("catalogue = \"DNV-RP-C203\"\ncategory = \"F\"", "catalogue = 'own'")
            + "[sections.curve]\nslopes = [3]\nlog10_a = [12]\nstated_as = 'mean'\nsd_log10_n = 0.3\nsource = 'x'\n";
        Scenario own = Good.Parse(Good.Text + curve + "[fatigue]\nminer_sum = 1\n").Scenario;
        var ofCurve = (Lognormal)((Value.Uncertain)own.Find(Quantities.SectionLifeScatter, own.Sections[0])!.Value).Distribution;
        Assert.Equal(0.3 * Math.Log(10), ofCurve.StandardDeviationOfLn, 1e-12);
    }

    [Fact]
    public void Evidence_may_name_the_section()
    {
        string evidence = Good.Text + Seat + "[evidence]\nfailed_at_km = 40000\ncracked_at = ";
        Assert.Equal("seat", Good.Parse(evidence + "'seat'\n").Scenario.Evidence.CrackedAt);
        Assert.Equal("axle", Good.Parse(evidence + "'axle'\n").Scenario.Evidence.CrackedAt);
        Assert.Null(Good.Parse(Good.Text + Seat).Scenario.Evidence.CrackedAt);
    }

    [Theory]
    [InlineData("lever_arm_mm = 300\n", "", "a.toml(31,1): sections.seat.lever_arm_mm is missing")]
    [InlineData("outside_diameter_mm = 100\n", "", "a.toml(31,1): sections.seat.outside_diameter_mm is missing")]
    [InlineData("wall_mm = 7\n", "", "a.toml(31,1): sections.seat.wall_mm is missing")]
    [InlineData("category = \"F\"\n", "", "a.toml(31,1): sections.seat.category is missing")]
    [InlineData("category = \"F\"", "category = \"Z\"", "a.toml(37,12): DNV-RP-C203 has no category \"Z\"; possible: B1, B2, C, C1, C2, D, E, F, F1, F3, G, W1, W2, W3")]
    [InlineData("wall_mm = 7", "wall_mm = 70", "a.toml(35,11): sections.seat.wall_mm (70) must not be above half of outside_diameter_mm (100)")]
    [InlineData("wall_mm = 7", "wall_mm = 7\nwidth_mm = 70", "a.toml(36,1): sections.seat.width_mm does not belong to shape \"tube\", only to \"box\"")]
    [InlineData("wall_mm = 7", "wall_mm = 7\nthicknes = 70", "a.toml(36,1): unknown key \"thicknes\" in sections.seat")]
    [InlineData("name = \"seat\"", "name = \"axle\"", "a.toml(32,8): \"axle\" is the first checked section, of [axle]; give this one another name")]
    [InlineData("name = \"seat\"", "name = \"a b\"", "a.toml(32,8): the name of a section is up to 40 letters, digits, - and _, not \"a b\"")]
    [InlineData("category = \"F\"\n", "category = \"F\"\n[fatigue]\nminer_sum = { distribution = 'uniform', low = 0.5, high = 1 }\n",
        "a.toml(31,1): sections.seat.life_scatter must be stated: it follows from fatigue.miner_sum and fatigue.log10_life_scatter only where the first is certain or lognormal and the second certain or normal")]
    [InlineData("category = \"F\"\n", "category = \"F\"\n[evidence]\nfailed_at_km = 5\ncracked_at = 'saet'\n",
        "a.toml(40,14): evidence.cracked_at must be \"axle\" or \"seat\", not \"saet\"")]
    [InlineData("category = \"F\"\n", "category = \"F\"\n[evidence]\nsurvived_km = 5\ncracked_at = 'seat'\n",
        "a.toml(40,1): evidence.cracked_at needs a failed_at_km or failed_between_km")]
    [InlineData("category = \"F\"\n", "category = \"F\"\n[[remedies]]\nname = 'x'\nchange = { 'sections.saet.wall_mm' = 8 }\n",
        "a.toml(40,12): there is no input \"sections.saet.wall_mm\"; did you mean \"sections.seat.wall_mm\"?")]
    [InlineData("category = \"F\"\n", "category = \"F\"\n[[remedies]]\nname = 'x'\nchange = { 'sections.seat.wall_mm' = 51 }\n",
        "a.toml(38,1): \"x\": sections.seat.wall_mm (51) must not be above half of outside_diameter_mm (100)")]
    public void Mistakes_in_a_section_are_named(string old, string replacement, string expected)
    {
        Assert.Contains(old, Seat);
        Assert.Equal([expected], Good.ErrorsOf(Good.Text + Seat.Replace(old, replacement)));
    }

    [Fact]
    public void Two_sections_of_one_name_are_an_error() => Assert.Equal(
        ["a.toml(39,8): there are two sections with the name \"seat\""], Good.ErrorsOf(Good.Text + Seat + Seat));
}
