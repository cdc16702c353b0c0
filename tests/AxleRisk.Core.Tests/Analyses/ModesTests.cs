using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>Several modes of failure in the analyses.</summary>
public class ModesTests
{
    private static readonly LifeModel Model = new(ThreeModes.Scenario);
    private static readonly RunOptions Options = new();

    // Two estimates of one number; both intervals are of 95 %, twice as wide they miss each other once in some thousand seeds.
    [Fact]
    public void Averaging_the_chances_and_counting_failures_agree_at_every_distance()
    {
        RiskResult exact = Risk(Model, RiskMethod.Auto, 4096, "plain");
        RiskResult counted = Risk(Model, RiskMethod.Crude, 8192, "plain");
        Assert.Equal(RiskMethod.Conditional, exact.Method);
        Assert.Equal([FailureMode.Fatigue, YieldMode.Name, BearingMode.Name], exact.Modes.Select(m => m.Mode));
        for (int i = 0; i < exact.Distances.Length; i++)
        {
            Interval a = exact.Distances[i].Probability, b = counted.Distances[i].Probability;
            Assert.True(Math.Abs(a.Estimate - b.Estimate) < (a.High - a.Low) + (b.High - b.Low),
                $"{exact.Distances[i].DistanceKm} km: {a} and {b}");
            foreach ((ModeRisk x, ModeRisk y) in exact.Modes.Zip(counted.Modes))
            {
                Assert.Equal(x.First[i], y.First[i], 0.03); // 5 standard errors of 8192 counts about a half
            }
        }
    }

    [Fact]
    public void The_modes_add_up_and_each_is_worth_something()
    {
        RiskResult result = Risk(Model, RiskMethod.Auto, 2048, "sobol");
        for (int i = 0; i < result.Distances.Length; i++)
        {
            Assert.Equal(result.Distances[i].Probability.Estimate, result.Modes.Sum(m => m.First[i]),
                1e-3 * result.Distances[i].Probability.Estimate);
        }

        double required = result.AtRequired.Probability.Estimate;
        Assert.All(result.Modes, m => Assert.InRange(m.Without, 0.1 * required, 0.99 * required));
    }

    [Fact]
    public void Ranking_and_comparison_give_the_failure_probability_of_risk()
    {
        Interval risk = Risk(Model, RiskMethod.Auto, 4096, "sobol").AtRequired.Probability;
        RankResult rank = RankAnalysis.Run(Model, new StudySettings(60_000, 1, "sobol"), Options);
        Interval compared = Comparison.Run([Model], Model.Scenario.RequiredKm, new StudySettings(8192, 1, "sobol"),
            Options).Cases[0].Probability;
        Assert.Equal(risk.Estimate, rank.Probability.Estimate, 0.05 * risk.Estimate);
        Assert.InRange(risk.Estimate, compared.Low - 0.01, compared.High + 0.01);
        Assert.Contains(rank.Factors, f => f.Factor.Name == "bearing.life_scatter" && f.Failure.Total.Estimate > 0.005);
        Assert.Contains(rank.Factors, f => f.Factor.Name == "axle.largest_load_scatter");
    }

    [Fact]
    public void The_same_digits_on_one_thread_and_on_four_and_in_parts()
    {
        var settings = new StudySettings(3000, 5, "sobol");
        RiskState one = RiskAnalysis.Run(Model, settings, new RiskQuestion(), new RunOptions { Threads = 1 }).State;
        RiskState four = RiskAnalysis.Run(Model, settings, new RiskQuestion(), new RunOptions { Threads = 4 }).State;
        RiskState joined = RiskAnalysis.Join([.. Enumerable.Range(1, 3).Select(i =>
            RiskAnalysis.Run(Model, settings, new RiskQuestion { Part = new StudyPart(i, 3) }, Options).State)]);
        foreach (RiskState other in new[] { four, joined })
        {
            foreach ((LifeSummary a, LifeSummary b) in one.Replicates.Zip(other.Replicates))
            {
                Assert.Equal(a.Modes!.Sums().SelectMany(s => s), b.Modes!.Sums().SelectMany(s => s)); // bitwise
            }
        }
    }

    private static RiskResult Risk(LifeModel model, RiskMethod method, long evaluations, string sampling) =>
        RiskAnalysis.Run(model, new StudySettings(evaluations, 3, sampling), new RiskQuestion { Method = method }, Options).Result;
}
