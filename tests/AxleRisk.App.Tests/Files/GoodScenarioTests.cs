using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

public class GoodScenarioTests
{
    private static Scenario Read(string text) => Good.Parse(text).Scenario;

    [Fact]
    public void Stated_numbers_and_texts_arrive()
    {
        Scenario s = Read(Good.Text);
        Assert.Equal("A tube on gravel", s.Title);
        Assert.Equal("", s.About);
        Assert.Equal(50000, s.RequiredKm);
        Assert.Equal(SectionShape.Tube, s.Shape);
        Assert.Equal("DNV-RP-C203", s.Detail.Catalogue);
        Assert.Equal(["E"], s.Detail.Categories);
        Assert.Equal([1.0], s.Detail.Weights);
        Assert.Null(s.Detail.ThicknessExponent);
        Assert.Equal([new Leg("road", null, 0.75), new Leg("gravel", 'C', 0.25)], s.Legs);
        Assert.Equal(CycleCounting.Dirlik, s.Counting);
        Assert.Null(s.MixConcentration);
        Assert.Equal(new Value.Certain(90), s.Find(Quantities.UnsprungMass)!.Value);
    }

    [Fact]
    public void Distributions_arrive_with_knowledge_and_nominal()
    {
        Scenario s = Read(Good.Text);
        Value.Uncertain sprung = Assert.IsType<Value.Uncertain>(s.Find(Quantities.SprungMass)!.Value);
        Assert.Equal([new Parameter("median", 600), new Parameter("sd_ln", 0.10)],
            Assert.IsType<Lognormal>(sprung.Distribution).Parameters);
        Assert.Equal(Knowledge.Varies, sprung.Knowledge);
        Assert.Null(sprung.StatedNominal);
        Value.Uncertain damper = Assert.IsType<Value.Uncertain>(s.Find(Quantities.DamperRate)!.Value);
        Assert.Equal(Knowledge.Unknown, damper.Knowledge);
        Assert.Equal(4.2, damper.Nominal);
    }

    [Fact]
    public void What_is_not_stated_has_its_default_and_says_so()
    {
        Scenario s = Read(Good.Text);
        Input share = s.Find(Quantities.PayloadShare)!;
        Assert.True(share.IsDefault);
        Assert.Equal(Quantities.PayloadShare.Default, share.Value);
        Assert.True(s.Find(Quantities.StressFactor)!.IsDefault);
        Assert.False(s.Find(Quantities.SprungMass)!.IsDefault);
    }

    [Fact]
    public void Inputs_stand_in_the_order_of_the_quantities_and_then_of_the_legs()
    {
        string[] names = [.. Read(Good.Text).Inputs.Select(i => i.Name)];
        Assert.Equal(
            [
                "vehicle.sprung_kg", "vehicle.payload_kg", "vehicle.payload_share", "vehicle.unsprung_kg", "vehicle.spring_n_per_mm",
                "vehicle.helper_spring_n_per_mm", "vehicle.damper_n_s_per_mm", "vehicle.damper_condition", "vehicle.tyre_n_per_mm",
                "vehicle.tyre_damping_n_s_per_mm", "vehicle.contact_length_mm", "vehicle.outboard_share",
                "axle.lever_arm_mm", "axle.wheel_offset_mm", "axle.outside_diameter_mm", "axle.wall_mm", "axle.corrosion_loss_mm",
                "axle.stress_concentration",
                "use.speed_factor", "use.roughness_factor", "use.waviness",
                "legs.road.speed_km_per_h", "legs.gravel.speed_km_per_h", "legs.road.roughness_1e_6_m3",
                "legs.gravel.roughness_within_class",
                "legs.road.corrugated_share", "legs.gravel.corrugated_share",
                "fatigue.stress_factor", "fatigue.damage_ratio", "fatigue.miner_sum", "fatigue.log10_life_scatter",
            ],
            names);
    }

    [Theory]
    [InlineData("corrugated_share = 0.3", true)]
    [InlineData("corrugated_share = { distribution = \"uniform\", low = 0, high = 0.5 }", true)]
    [InlineData("corrugated_share = 0", false)]
    [InlineData("corrugated_share = 0\ncorrugation_rms_mm = 5", false)]
    public void A_corrugation_belongs_only_to_a_leg_that_is_corrugated(string stated, bool expected)
    {
        Scenario s = Read(Good.With("road_class = \"C\"", $"road_class = \"C\"\n{stated}"));
        Assert.Equal(expected, s.Find(Quantities.CorrugationWavelength, 1) is not null);
        Assert.Equal(expected, s.Find(Quantities.CorrugationRms, 1) is not null);
        Assert.Null(s.Find(Quantities.CorrugationRms, 0));
    }

    [Fact]
    public void A_box_has_width_and_height()
    {
        Scenario s = Read(Good.With("outside_diameter_mm = 95", "shape = \"box\"\nwidth_mm = 80\nheight_mm = 100"));
        Assert.Equal(SectionShape.Box, s.Shape);
        Assert.Null(s.Find(Quantities.OutsideDiameter));
        Assert.Equal(100, s.Find(Quantities.BoxHeight)!.Value.Nominal);
    }

    [Fact]
    public void A_given_section_modulus_needs_no_wall()
    {
        Scenario s = Read(Good.With("outside_diameter_mm = 95\nwall_mm = 6", "shape = \"given\"\nsection_modulus_mm3 = 36000"));
        Assert.Equal(SectionShape.Given, s.Shape);
        Assert.Equal(new Value.Certain(1), s.Find(Quantities.Wall)!.Value);
        Assert.True(s.Find(Quantities.Wall)!.IsDefault);
        Assert.Null(s.Find(Quantities.CorrosionLoss));
    }

    [Fact]
    public void A_sub_table_and_dotted_keys_state_a_distribution_as_well_as_an_inline_table()
    {
        string inline = "sprung_kg = { distribution = \"lognormal\", median = 600, sd_ln = 0.10 }";
        string dotted = Good.With(inline, "sprung_kg.distribution = \"lognormal\"\nsprung_kg.median = 600\nsprung_kg.sd_ln = 0.10");
        string table = Good.With(inline, "") + "[vehicle.sprung_kg]\ndistribution = \"lognormal\"\nmedian = 600\nsd_ln = 0.10\n";
        string expected = Show(Read(Good.Text));
        Assert.Equal(expected, Show(Read(dotted)));
        Assert.Equal(expected, Show(Read(table)));
        static string Show(Scenario s) => ((Value.Uncertain)s.Find(Quantities.SprungMass)!.Value).Distribution.ToString();
    }

    [Fact]
    public void A_category_may_be_a_choice()
    {
        Detail detail = Read(Good.With(
            "category = \"E\"",
            "category = { distribution = \"choice\", values = [\"E\", \"F\"], weights = [0.7, 0.3], knowledge = \"unknown\" }\nthickness_exponent = 0.2")).Detail;
        Assert.Equal(["E", "F"], detail.Categories);
        Assert.Equal([0.7, 0.3], detail.Weights);
        Assert.Equal(Knowledge.Unknown, detail.Knowledge);
        Assert.Equal(0.2, detail.ThicknessExponent);
    }

    [Fact]
    public void The_mix_the_counting_and_correlations_arrive()
    {
        Scenario s = Read(Good.With("[detail]", "[use]\nmix_concentration = 200\nmix_knowledge = \"unknown\"\n[detail]") + """
            [fatigue]
            counting = "tovo-benasciutti"
            [[correlations]]
            between = ["vehicle.sprung_kg", "legs.gravel.speed_km_per_h"]
            spearman = -0.5
            """);
        Assert.Equal(200, s.MixConcentration);
        Assert.Equal(Knowledge.Unknown, s.MixKnowledge);
        Assert.Equal(CycleCounting.TovoBenasciutti, s.Counting);
        Assert.Equal([new RankCorrelation("vehicle.sprung_kg", "legs.gravel.speed_km_per_h", -0.5)], s.Correlations);
    }

    [Fact]
    public void Shares_are_scaled_to_a_sum_of_one()
    {
        Scenario s = Read(Good.With("share = 0.75", "share = 0.7500004"));
        Assert.Equal(1, s.Legs.Sum(l => l.Share), 15);
    }

    [Fact]
    public void A_negligible_part_outside_the_domain_is_cut_off()
    {
        // P(X < 0) = Phi(-10), about 8e-24.
        Scenario s = Read(Good.With("unsprung_kg = 90", "unsprung_kg = { distribution = \"normal\", mean = 90, sd = 9 }"));
        Assert.Equal(0, ((Value.Uncertain)s.Find(Quantities.UnsprungMass)!.Value).Distribution.Minimum);
    }
}
