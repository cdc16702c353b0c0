using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

public sealed class RankAnalysisTests
{
    // With no factor but the two that scale life, ln life is a sum of two normals and everything has a closed form.
    private static readonly Scenario ScaleOnly = FiveLegs.Scenario with
    {
        Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
            i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                { Value = new Value.Certain(i.Value.Nominal) })],
        RequiredKm = 200_000,
    };

    [Fact]
    public void Two_scale_factors_alone_have_the_indices_of_the_linear_limit_state()
    {
        RankResult result = Rank(ScaleOnly, 60_000);
        double sdMiner = 0.29, sdScatter = 0.20 * Math.Log(10), sigma = Math.Sqrt((sdMiner * sdMiner) + (sdScatter * sdScatter));
        double share = sdMiner * sdMiner / (sigma * sigma);
        RankedFactor miner = result.Factors.Single(f => f.Factor.Name == "fatigue.miner_sum");
        AssertInside(share, miner.Life.First);
        AssertInside(share, miner.Life.Total);

        // Source: closed form by the bivariate normal distribution; 486,590 km from an independent numpy implementation.
        double beta = Math.Log(486_590 / 200_000.0) / sigma;
        double p = StandardNormal.Cumulative(-beta);
        double First(double rho) => (BivariateNormal.Cumulative(-beta, -beta, rho) - (p * p)) / (p * (1 - p));
        Assert.Equal(p, result.Probability.Estimate, 1e-3 * p);
        Assert.Equal(First(share), miner.Failure.First.Estimate, 1e-3);
        Assert.Equal(1 - First(1 - share), miner.Failure.Total.Estimate, 1e-3);
        Assert.Equal(StandardNormal.Cumulative(-beta * sigma / sdScatter), miner.AtNominal.Probability.Estimate, 1e-4);
    }

    [Fact]
    public void Counting_failures_gives_the_same_event_indices_as_averaging_probabilities()
    {
        // A triangular scatter of the same spread cannot be integrated, so failures are counted; the answer hardly moves.
        Scenario counted = FiveLegs.With(
            Quantities.LifeScatter, new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies)) with
        { RequiredKm = 300_000 };
        RankResult crude = Rank(counted, 200_000);
        RankResult exact = Rank(FiveLegs.Scenario with { RequiredKm = 300_000 }, 200_000);
        Assert.False(crude.IsConditional);
        Assert.True(exact.IsConditional);
        foreach (RankedFactor f in exact.Factors)
        {
            RankedFactor other = crude.Factors.Single(o => o.Factor.Name == f.Factor.Name);
            AssertClose(f.Failure.First, other.Failure.First);
            AssertClose(f.Failure.Total, other.Failure.Total);
            AssertClose(f.AtNominal.Probability, other.AtNominal.Probability);
        }
    }

    [Fact]
    public void More_wall_means_fewer_failures_and_more_stress_means_more()
    {
        RankResult result = Rank(FiveLegs.Scenario, 200_000);
        Assert.Equal(-1, result.Factors.Single(f => f.Factor.Name == "axle.wall_mm").Direction);
        Assert.Equal(1, result.Factors.Single(f => f.Factor.Name == "fatigue.stress_factor").Direction);
    }

    [Fact]
    public void The_number_of_threads_changes_no_digit()
    {
        RankResult one = RankAnalysis.Run(new LifeModel(FiveLegs.Scenario), new StudySettings(20_000, 1, "plain"), new RunOptions
        { Threads = 1 });
        RankResult many = RankAnalysis.Run(new LifeModel(FiveLegs.Scenario), new StudySettings(20_000, 1, "plain"), new RunOptions
        { Threads = 4 });
        Assert.Equal(one.Factors.Select(f => (f.Factor.Name, f.Life, f.Failure)),
            many.Factors.Select(f => (f.Factor.Name, f.Life, f.Failure)));
    }

    private static RankResult Rank(Scenario scenario, long evaluations) =>
        RankAnalysis.Run(new LifeModel(scenario), new StudySettings(evaluations, 1, "plain"), new RunOptions());

    // A 95 % interval widened to four standard errors (Student, 31 degrees of freedom: 2.04).
    private static void AssertInside(double expected, Interval interval)
    {
        double se = (interval.High - interval.Low) / (2 * 2.04);
        Assert.Equal(expected, interval.Estimate, (4 * se) + 1e-9);
    }

    private static void AssertClose(Interval a, Interval b)
    {
        double se = Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)) / (2 * 2.04);
        Assert.Equal(a.Estimate, b.Estimate, (4 * se) + 1e-9);
    }
}
