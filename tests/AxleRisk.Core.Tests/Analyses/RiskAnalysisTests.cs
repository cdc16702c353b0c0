using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

public sealed class RiskAnalysisTests
{
    private const long Evaluations = 40_000;

    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    // Source: an independent numpy implementation of the same equations; its standard errors are 2 %, 0.7 % and 0.4 %.
    [Theory]
    [InlineData(RiskMethod.Crude, 20_000, 0.001564, 0.02)]
    [InlineData(RiskMethod.Crude, 50_000, 0.019468, 0.007)]
    [InlineData(RiskMethod.Crude, 100_000, 0.079503, 0.004)]
    [InlineData(RiskMethod.Conditional, 20_000, 0.001564, 0.02)]
    [InlineData(RiskMethod.Conditional, 50_000, 0.019468, 0.007)]
    [InlineData(RiskMethod.Conditional, 100_000, 0.079503, 0.004)]
    public void The_benchmark_fails_as_often_as_an_independent_program_says(RiskMethod method, double km, double expected, double relative)
    {
        DistanceRisk risk = Run(method).Distances.Single(d => d.DistanceKm == km);

        // Four standard errors of the two runs together; the interval is 2 x 1.96 standard errors wide.
        double own = (risk.Probability.High - risk.Probability.Low) / (2 * 1.96);
        Assert.Equal(expected, risk.Probability.Estimate, 4 * Math.Sqrt((own * own) + Math.Pow(relative * expected, 2)));
    }

    [Fact]
    public void The_conditional_method_has_the_narrower_interval()
    {
        Interval crude = Run(RiskMethod.Crude).AtRequired.Probability;
        Interval conditional = Run(RiskMethod.Conditional).AtRequired.Probability;
        Assert.True(conditional.High - conditional.Low < 0.7 * (crude.High - crude.Low));
    }

    [Fact]
    public void The_lives_agree_with_the_failure_probability()
    {
        RiskResult result = Run(RiskMethod.Conditional);
        LifeQuantile b10 = result.Lives.Single(l => l.Percent == 10);
        RiskResult there = RiskAnalysis.Run(
            Model, new StudySettings(Evaluations, 2, "plain"), new RiskQuestion { DistancesKm = [b10.LifeKm.Low, b10.LifeKm.High] },
                new RunOptions()).Result;

        // The ends of the B10 life enclose the distance where a tenth fails, give or take the other run's error (2 %).
        Assert.InRange(0.1, there.Distances.Single(d => d.DistanceKm == b10.LifeKm.Low).Probability.Estimate * 0.98,
            there.Distances.Single(d => d.DistanceKm == b10.LifeKm.High).Probability.Estimate * 1.02);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void The_number_of_threads_changes_no_digit(int threads)
    {
        RiskResult one = Small(1);
        RiskResult many = Small(threads);
        Assert.Equal(one.Distances.AsEnumerable(), many.Distances);
        Assert.Equal(one.Lives.AsEnumerable(), many.Lives);
        Assert.Equal(one.Legs.AsEnumerable(), many.Legs);
    }

    [Fact]
    public void The_damage_of_the_legs_adds_up_to_all_of_it() =>
        Assert.Equal(1, Run(RiskMethod.Crude).Legs.Sum(l => l.Share.Estimate), 1e-12);

    private static RiskResult Small(int threads) => RiskAnalysis.Run(
        Model, new StudySettings(2_000, 3, "latin-hypercube"), new RiskQuestion(), new RunOptions { Threads = threads }).Result;

    private static RiskResult Run(RiskMethod method) =>
        RiskAnalysis.Run(Model, new StudySettings(Evaluations, 1, "plain"), new RiskQuestion { Method = method }, new RunOptions()).Result;
}
