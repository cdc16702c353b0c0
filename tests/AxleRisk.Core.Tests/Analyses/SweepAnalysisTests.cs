using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>Inputs moved over a range.</summary>
public class SweepAnalysisTests
{
    private static readonly StudySettings Settings = new(8_192, 3, "sobol");

    private static SweptInput Arm { get; } = new("axle.lever_arm_mm", "100", "200", 2);

    private static SweptInput Factor { get; } = new("fatigue.stress_factor", "0.8", "1.2", 2);

    [Fact]
    public void A_point_is_the_scenario_with_that_value()
    {
        LifeModel model = Model();
        SweepResult swept = SweepAnalysis.Run(model, [Arm], Settings, new RunOptions());
        Assert.Equal(["100", "150", "200"], swept.Points.Select(p => p.Values[0]));
        var there = new LifeModel(Remedy.Apply(
            model.Scenario, new Remedy("", null, [new Change.ToValue("axle.lever_arm_mm", new Value.Certain(200))])));
        ComparisonResult pair = Comparison.Run([model, there], model.Scenario.RequiredKm, Settings, new RunOptions());
        Assert.Equal(pair.Cases[1].Probability.Estimate, swept.Points[2].Case.Probability.Estimate, 1e-12);
        Assert.Equal(pair.Cases[1].Change!.Ratio.Low, swept.Points[2].Case.Change!.Ratio.Low, 1e-9);
        double life = BaseCaseAnalysis.Run(there).LifeKm / BaseCaseAnalysis.Run(model).LifeKm;
        Assert.Equal(life, swept.Points[2].RelativeLife, 1e-12 * life);
        Assert.Equal(1 / life, swept.Points[2].RelativeDamage, 1e-9 / life);
    }

    // Stress goes with the arm and with the factor alike, so the life goes with their product alone, whatever the S-N curve.
    [Fact]
    public void Two_that_act_through_their_product_do_together_what_their_product_does()
    {
        LifeModel model = Model();
        SweepResult both = SweepAnalysis.Run(model, [Arm, Factor], Settings, new RunOptions());
        Assert.Equal(3 + 3 + 9, both.Points.Length);
        double arm = both.Inputs[0].Stated;
        SweepPoint joint = both.Points.Single(p => p.Values[0] == "200" && p.Values[1] == "0.8");
        SweepResult product = SweepAnalysis.Run(
            model, [new("axle.lever_arm_mm", (0.8 * 200).ToString("R"), "300", 1)], Settings, new RunOptions());
        double stated = both.Inputs[1].Stated;
        Assert.Equal(1, stated, 1e-9);
        Assert.True(arm > 0);
        Assert.Equal(product.Points[0].RelativeLife, joint.RelativeLife, 1e-9 * joint.RelativeLife);
        SweepPoint a = both.Points.Single(p => p.Values[0] == "200" && p.Values[1] is null);
        SweepPoint b = both.Points.Single(p => p.Values[0] is null && p.Values[1] == "0.8");
        Assert.Equal(joint.RelativeLife / (a.RelativeLife * b.RelativeLife), joint.LifeTogether!.Value, 1e-9);
        Assert.All(both.Points, p => Assert.Equal(p.Values.Any(v => v is null), p.LifeTogether is null));
        Assert.All(both.Points[6..], p =>
            Assert.Equal(Alone(p, 0) * Alone(p, 1) * p.LifeTogether!.Value, p.RelativeLife, 1e-9 * p.RelativeLife));
        double Alone(SweepPoint point, int input) =>
            both.Points.Single(p => p.Values[input] == point.Values[input] && p.Values[1 - input] is null).RelativeLife;
        double together = joint.Case.Probability.Estimate * both.Stated.Probability.Estimate
            / (a.Case.Probability.Estimate * b.Case.Probability.Estimate);
        Assert.Equal(together, joint.Together!.Value.Estimate, 1e-9 * together);
    }

    // An interval of 95 %: 20 seeds against 64 times the sample (binomial: at least 15 of 20 but for 3 in 10,000).
    [Fact]
    public void What_two_do_together_has_an_interval_that_holds()
    {
        LifeModel model = Model();
        Interval Together(long rows, ulong seed) => SweepAnalysis.Run(
            model, [Arm with { Steps = 1 }, Factor with { Steps = 1 }], new StudySettings(rows, seed, "plain"), new RunOptions())
            .Points[^1].Together!.Value;
        double truth = Together(131_072, 99).Estimate;
        int held = Enumerable.Range(1, 20).Count(seed => Together(2_048, (ulong)seed) is var i && i.Low <= truth && truth <= i.High);
        Assert.InRange(held, 15, 20);
    }

    [Theory]
    [InlineData("axle.lever", "1", "2", "there is no input \"axle.lever\"")]
    [InlineData("axle.lever_arm_mm", "2", "1", "must go upward")]
    [InlineData("axle.lever_arm_mm", "-1", "1", "must be a number")]
    [InlineData("axle.lever_arm_mm", "one", "2", "needs numbers")]
    [InlineData("detail.category", "F", "Z", "no category \"Z\"")]
    [InlineData("detail.category", "F", "C", "from a better category to a worse one")]
    public void What_is_no_range_is_refused(string input, string from, string to, string why)
    {
        StudyException refused = Assert.Throws<StudyException>(
            () => SweepAnalysis.CasesOf(Model().Scenario, [new SweptInput(input, from, to)]));
        Assert.Contains(why, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_inputs_with_a_name_alike_four_are_told()
    {
        StudyException refused = Assert.Throws<StudyException>(
            () => SweepAnalysis.CasesOf(Model().Scenario, [new SweptInput("legs.gravel.speed_km_per_h", "1", "2")]));
        Assert.Contains("there is legs.leg1.speed_km_per_h, ", refused.Message, StringComparison.Ordinal);
        Assert.EndsWith("legs.leg4.speed_km_per_h", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_inputs_with_a_name_alike_the_only_one_is_told()
    {
        StudyException refused = Assert.Throws<StudyException>(
            () => SweepAnalysis.CasesOf(Model().Scenario, [new SweptInput("shaft.lever_arm_mm", "1", "2")]));
        Assert.EndsWith("there is axle.lever_arm_mm", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_usual_range_of_every_input_is_one_for_it()
    {
        Scenario scenario = Model().Scenario;
        Assert.All(
            scenario.Inputs.Select(i => i.Name).Append(Change.CategoryName),
            name => Assert.True(SweepAnalysis.CasesOf(scenario, [SweptInput.Usual(scenario, name)]) > 2, name));
    }

    private static LifeModel Model() => new(FiveLegs.Scenario);

    [Fact]
    public void A_range_of_categories_holds_both_its_ends_and_all_between()
    {
        Scenario scenario = Model().Scenario with { Detail = new Detail("DNV-RP-C203", ["F"], [1]) };
        Assert.Equal(["C", "C1", "C2", "D", "E", "F"],
            new SweptInput("detail.category", "C", "F").Points(scenario).Select(v => v.Text)); // the order of DNV-RP-C203, table 2-1
    }
}
