using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Ranking;

public sealed class FactorRangeTests
{
    [Fact]
    public void A_factor_held_leaves_the_normal_probability_of_the_rest()
    {
        // Only Miner sum and scatter are uncertain: ln life = ln 486,590 + ln M + ln 10 s (486,590 km: independent numpy
        // implementation), so P(fail | M = m) = Phi((ln(200,000 / 486,590) - ln m) / (0.20 ln 10)).
        Scenario scaleOnly = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
                i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                    { Value = new Value.Certain(i.Value.Nominal) })],
            RequiredKm = 200_000,
        };
        FactorRangeResult result = Run(scaleOnly, "fatigue.miner_sum", 512);
        Assert.Equal(FactorRangeAnalysis.Levels, result.Points.Select(p => p.Level));
        Assert.All(result.Points, p =>
        {
            // Quantile of the lognormal distribution: exp(0.29 z).
            Assert.Equal(Math.Exp(0.29 * StandardNormal.Quantile(p.Level)), p.Value, 1e-9 * p.Value);
            double expected = StandardNormal.Cumulative((Math.Log(200_000 / 486_590.0) - Math.Log(p.Value)) / (0.20 * Math.Log(10)));
            Assert.Equal(expected, p.Case.Probability.Estimate, 2e-3 * expected);
        });
    }

    [Fact]
    public void The_states_of_a_choice_average_to_the_scenario_as_it_is()
    {
        // The law of total probability, up to the error of sampling.
        Scenario chosen = FiveLegs.Scenario with
        { Detail = FiveLegs.Scenario.Detail with { Categories = ["E", "F"], Weights = [0.6, 0.4] } };
        FactorRangeResult result = Run(chosen, "detail.category", 20_000);
        Assert.Equal([0.6, 0.4], result.Points.Select(p => p.Level));
        double average = result.Points.Sum(p => p.Level * p.Case.Probability.Estimate);
        Interval free = result.Base.Probability;
        Assert.InRange(average, free.Estimate - (2 * (free.Estimate - free.Low)), free.Estimate + (2 * (free.High - free.Estimate)));
        Assert.True(result.Points[1].Case.Probability.Low > result.Points[0].Case.Probability.High); // F is the worse detail
    }

    [Fact]
    public void The_points_agree_with_those_of_the_ranking()
    {
        LifeModel model = new(FiveLegs.Scenario);
        RankedFactor ranked = RankAnalysis.Run(model, new StudySettings(200_000, 1, Core.Sampling.SamplingPlan.Names[0]), new RunOptions())
            .Factors.Single(f => f.Factor.Name == "use.roughness_factor");
        FactorRangeResult result = Run(FiveLegs.Scenario, "use.roughness_factor", 20_000);
        Assert.Equal(ranked.AtHigh!.Value, result.Points[^2].Value);
        Interval one = ranked.AtHigh.Probability, other = result.Points[^2].Case.Probability;
        Assert.True(one.Low < other.High && other.Low < one.High);
        Assert.True(result.Points.Zip(result.Points.Skip(1), (a, b) => a.Case.Probability.Estimate < b.Case.Probability.Estimate)
            .All(x => x));
    }

    [Fact]
    public void An_uncertain_mix_is_held_at_its_stated_shares()
    {
        FactorRangeResult result = Run(FiveLegs.Scenario with { MixConcentration = 20 }, MixFactor.FactorName, 2_000);
        FactorRangeResult certain = Run(FiveLegs.Scenario, "use.roughness_factor", 2_000);
        Assert.Equal(certain.Base.Probability.Estimate, Assert.Single(result.Points).Case.Probability.Estimate, 1e-12);
    }

    private static FactorRangeResult Run(Scenario scenario, string factor, long evaluations)
    {
        var model = new LifeModel(scenario);
        return FactorRangeAnalysis.Run(
            model, model.Factors.Find(factor)!, new StudySettings(evaluations, 1, Core.Sampling.SamplingPlan.Names[0]), new RunOptions());
    }
}
