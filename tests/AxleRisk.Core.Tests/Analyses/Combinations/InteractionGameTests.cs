using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

public sealed class InteractionGameTests
{
    // Source: closed form of the Ishigami function, a = 7, b = 0.1: S1 .313905, S2 .442411, S13 .243684, no other term.
    [Fact]
    public void Ishigami_function()
    {
        double[] terms = new double[8];
        (terms[1], terms[2], terms[5]) = (0.313905191148, 0.442411144790, 0.243683664062);
        double[] game = Closed(terms);
        Assert.Equal(0.243683664062, InteractionGame.SecondOrder(game, 0, 2), 1e-12);
        Assert.Equal(0.243683664062, InteractionGame.Shapley(game, 0, 2), 1e-12);
        Assert.Equal(0, InteractionGame.Shapley(game, 0, 1), 1e-12);
    }

    // Source: Grabisch and Roubens 1999: a term of k players gives 1 / (k - 1) to each of its pairs (from memory).
    [Fact]
    public void A_term_of_many_players_is_shared_among_its_pairs()
    {
        double[] terms = new double[32];
        (terms[0b111], terms[0b11011], terms[0b11]) = (0.3, 0.6, 0.1);
        double[] game = Closed(terms);
        Assert.Equal(0.1, InteractionGame.SecondOrder(game, 0, 1), 1e-12);
        Assert.Equal(0.1 + (0.3 / 2) + (0.6 / 3), InteractionGame.Shapley(game, 0, 1), 1e-12);
        Assert.Equal(0.6 / 3, InteractionGame.Shapley(game, 3, 4), 1e-12);
        Assert.Equal(0, InteractionGame.Shapley(game, 2, 4), 1e-12);
    }

    // Only Miner sum and scatter are uncertain: two normals in a linear limit state. Of two players second order is what is
    // left of the variance, 1 - S1 - S2. Source: closed form by the bivariate normal distribution.
    [Fact]
    public void Two_scale_factors_alone_have_the_interaction_of_the_linear_limit_state()
    {
        Scenario scenario = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
                i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                    { Value = new Value.Certain(i.Value.Nominal) })],
            RequiredKm = 200_000,
        };
        var model = new LifeModel(scenario);
        (var pairs, _, _) = InteractionAnalysis.Run(model, new StudySettings(200, 1, "plain"), model.Factors.Groups, new RunOptions());
        double sdMiner = 0.29, sdScatter = 0.20 * Math.Log(10), sigma = Math.Sqrt((sdMiner * sdMiner) + (sdScatter * sdScatter));
        double share = sdMiner * sdMiner / (sigma * sigma), beta = Math.Log(486_590 / 200_000.0) / sigma;
        double p = StandardNormal.Cumulative(-beta);
        double First(double rho) => (BivariateNormal.Cumulative(-beta, -beta, rho) - (p * p)) / (p * (1 - p));
        InteractionPair pair = Assert.Single(pairs);
        Assert.Equal(1 - First(share) - First(1 - share), pair.SecondOrder.Estimate, 1e-3);
        Assert.Equal(pair.SecondOrder.Estimate, pair.Shapley.Estimate, 1e-12);
    }

    // The same scatter once integrated and once (cut off at 15 standard deviations, so not recognised as normal) counted.
    [Fact]
    public void Counting_failures_gives_the_same_indices_as_integrating_the_scatter()
    {
        InteractionPair[] exact = TopFour(FiveLegs.Scenario with { RequiredKm = 300_000 });
        InteractionPair[] counted = TopFour(FiveLegs.With(
            Quantities.LifeScatter, new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies)) with
        { RequiredKm = 300_000 });
        foreach (InteractionPair pair in exact)
        {
            InteractionPair other = counted.Single(c => new[] { c.First, c.Second }.Order()
                .SequenceEqual(new[] { pair.First, pair.Second }.Order()));
            AssertClose(pair.SecondOrder, other.SecondOrder);
            AssertClose(pair.Shapley, other.Shapley);
        }
    }

    private static InteractionPair[] TopFour(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        string[] names = ["fatigue.stress_factor", "vehicle.sprung_kg", "fatigue.log10_life_scatter", "use.speed_factor"];
        return [.. InteractionAnalysis.Run(
            model, new StudySettings(20_000, 1, SamplingPlan.Names[0]),
            [.. model.Factors.Groups.Where(g => names.Contains(g[0].Name))], new RunOptions()).Pairs];
    }

    // A 95 % interval of each, widened to four standard errors (Student, 31 degrees of freedom: 2.04).
    private static void AssertClose(Interval a, Interval b)
    {
        double se = Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)) / (2 * 2.04);
        Assert.Equal(a.Estimate, b.Estimate, (4 * se) + 1e-9);
    }

    /// <summary>The value of a set is the sum of the terms inside it.</summary>
    private static double[] Closed(double[] terms) =>
        [.. Enumerable.Range(0, terms.Length).Select(set => terms.Where((_, t) => (t & ~set) == 0).Sum())];
}
