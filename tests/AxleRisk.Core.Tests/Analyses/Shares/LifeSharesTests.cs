using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Shares;

public sealed class LifeSharesTests
{
    private static readonly Quantity[] Scale = [Quantities.MinerSum, Quantities.LifeScatter];

    [Fact]
    public void Miner_sum_and_scatter_alone_have_their_parts_of_the_variance_exactly()
    {
        RankResult result = Rank(Only(Scale) with { RequiredKm = 200_000 }, 2_000);
        double miner = 0.29 * 0.29, scatter = Math.Pow(0.20 * Math.Log(10), 2);
        Assert.Equal(miner / (miner + scatter), Of(result, Quantities.MinerSum).LifeShare.Estimate, 1e-12);

        // Failure: closed moments by Phi2, two players. Median life 486,590 km from an independent numpy implementation (rounded: 1e-4).
        double share = miner / (miner + scatter), g = -Math.Log(486_590 / 200_000.0) / Math.Sqrt(miner + scatter);
        double p = StandardNormal.Cumulative(g);
        double[] values = SubsetGame.Values(2,
            [p * p, BivariateNormal.Cumulative(g, g, share), BivariateNormal.Cumulative(g, g, 1 - share), p]);
        Assert.Equal(values[0] / values.Sum(), Of(result, Quantities.MinerSum).FailureShare.Estimate, 1e-4);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Shares_sum_to_one_and_so_do_those_by_knowledge(bool allSubsets)
    {
        Scenario scenario = Only([.. Scale, Quantities.StressFactor, Quantities.RoughnessFactor, Quantities.Wall]);
        RankResult result = RankAnalysis.Run(
            new LifeModel(scenario), new StudySettings(20_000, 1, "plain"), new RunOptions(),
                RankQuestion.Of(allSubsets, evaluationsStated: true));
        Assert.Equal(allSubsets ? ShareMethod.AllSubsets : ShareMethod.RandomOrders, result.ShareMethod);
        Assert.Equal(result.Factors.Max(f => Math.Max(f.FailureShare.High - f.FailureShare.Low, f.LifeShare.High - f.LifeShare.Low)) / 2,
            result.WidestHalf, 1e-15);
        foreach (Func<RankedFactor, Interval> share in new Func<RankedFactor, Interval>[] { f => f.FailureShare, f => f.LifeShare })
        {
            Assert.Equal(1, result.Factors.Sum(f => share(f).Estimate), 1e-12);
        }

        Assert.Equal(1, result.ByKnowledge.Sum(k => k.Failure.Estimate), 1e-12);
        Assert.Equal(result.ByKnowledge.Single(k => k.Knowledge == Knowledge.Unknown).Failure,
            Of(result, Quantities.StressFactor).FailureShare);
        Assert.Equal(1, result.Legs.Sum(l => l.DamageShare.Estimate), 1e-12);
    }

    [Fact]
    public void All_subsets_random_orders_and_counted_failures_agree()
    {
        Scenario scenario = Only([.. Scale, Quantities.StressFactor, Quantities.RoughnessFactor]) with { RequiredKm = 200_000 };
        Scenario counted = scenario with
        {
            // A scatter cut where it hardly shows cannot be integrated: five factors are evaluated and failures counted.
            Inputs = [.. scenario.Inputs.Select(i => i.Quantity != Quantities.LifeScatter ? i : i with
            {
                Value = new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies),
            })],
        };
        (ShareRun Run, LifeShareProblem Problem) exact = Run(scenario, 60_000, true), orders = Run(scenario, 60_000, false),
            crude = Run(counted, 300_000, true);
        Assert.Equal(2, exact.Problem.ScalePlayers);
        Assert.Equal(0, crude.Problem.ScalePlayers);
        foreach (Factor factor in exact.Problem.Factors)
        {
            for (int output = 0; output < 2; output++)
            {
                Interval expected = Share(exact, output, factor.Name);
                AssertClose(expected, Share(orders, output, factor.Name));
                AssertClose(expected, Share(crude, output, factor.Name));
            }
        }
    }

    [Fact]
    public void Correlated_factors_have_shares_of_their_own_that_agree_between_the_methods()
    {
        Scenario scenario = Only([.. Scale, Quantities.StressFactor, Quantities.RoughnessFactor, Quantities.Wall]) with
        {
            RequiredKm = 200_000,
            Correlations = [new RankCorrelation("use.roughness_factor", "fatigue.stress_factor", 0.8)],
        };
        (ShareRun Run, LifeShareProblem Problem) exact = Run(scenario, 80_000, true), orders = Run(scenario, 80_000, false);

        // ln life is nearly linear in the two ln factors: sensitivities from the shares when they are independent.
        (ShareRun Run, LifeShareProblem Problem) independent = Run(scenario with { Correlations = [] }, 80_000, true);
        double scale = Share(independent, 0, "fatigue.miner_sum").Estimate / Share(exact, 0, "fatigue.miner_sum").Estimate;
        double a2 = Share(independent, 0, "use.roughness_factor").Estimate, b2 = Share(independent, 0, "fatigue.stress_factor").Estimate;
        double r = GaussianCopula.ToPearson(0.8), ab = Math.Sqrt(a2 * b2);

        // Owen and Prieur (2017, SIAM/ASA J. Uncertainty Quantification 5): Sh1 V = A^2 (1 - r^2 / 2) + r A B + B^2 r^2 / 2.
        double expected = ((a2 * (1 - (r * r / 2))) + (r * ab) + (b2 * r * r / 2)) / scale;
        Assert.Equal(expected, Share(exact, 0, "use.roughness_factor").Estimate, 0.02);
        foreach (Factor factor in exact.Problem.Factors)
        {
            AssertClose(Share(exact, 0, factor.Name), Share(orders, 0, factor.Name));
            AssertClose(Share(exact, 1, factor.Name), Share(orders, 1, factor.Name));
        }
    }

    [Fact]
    public void The_number_of_threads_changes_no_digit()
    {
        RankResult Run(int threads) => RankAnalysis.Run(
            new LifeModel(FiveLegs.Scenario), new StudySettings(20_000, 1, "plain"), new RunOptions { Threads = threads });
        Assert.Equal(Run(1).Factors.Select(f => (f.FailureShare, f.LifeShare)), Run(3).Factors.Select(f => (f.FailureShare, f.LifeShare)));
    }

    [Fact]
    public void Factors_come_by_share_and_those_whose_intervals_overlap_are_tied()
    {
        RankResult result = Rank(FiveLegs.Scenario, 60_000);
        Assert.Equal(result.Factors.OrderByDescending(f => f.FailureShare.Estimate), result.Factors);
        Assert.Equal("fatigue.stress_factor", result.Factors[0].Factor.Name);
        Assert.Contains(result.Factors, f => f.IsTied);
        foreach (RankedFactor f in result.Factors)
        {
            RankedFactor leader = result.Factors[f.Place - 1];
            Assert.True(leader.FailureShare.Low <= f.FailureShare.High, f.Factor.Name);
            Assert.Equal(leader.Place, f.Place);
        }
    }

    [Fact]
    public void The_usual_run_ends_when_the_shares_are_narrow_enough()
    {
        Scenario scenario = Only([.. Scale, Quantities.StressFactor, Quantities.RoughnessFactor]) with { RequiredKm = 200_000 };
        var model = new LifeModel(scenario);
        RankResult usual = RankAnalysis.Run(model, new StudySettings(500_000, 1, "plain"), new RunOptions());
        Assert.InRange(usual.WidestHalf, 0, RankQuestion.UsualHalfWidth);
        Assert.InRange(usual.Run.Evaluations, 1, 400_000);
        Assert.False(usual.Run.IsPartial);
        RankResult stated = RankAnalysis.Run(
            model, new StudySettings(500_000, 1, "plain"), new RunOptions(), RankQuestion.Of(allSubsets: false, evaluationsStated: true));
        Assert.InRange(stated.Run.Evaluations, 450_000, 500_000);
    }

    [Fact]
    public void All_subsets_are_refused_where_there_are_too_many()
    {
        Scenario scenario = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i => i.Value is not Value.Certain { Nominal: > 0 } ? i : i with
            {
                Value = new Value.Uncertain(new Normal(i.Value.Nominal, 1e-3 * i.Value.Nominal), Knowledge.Varies),
            })],
        };
        var question = new RankQuestion { AllSubsets = true };
        StudyException refused = Assert.Throws<StudyException>(() => RankAnalysis.DefaultEvaluations(new LifeModel(scenario), question));
        Assert.Contains("up to 13 factors", refused.Message, StringComparison.Ordinal);
        Assert.Throws<StudyException>(() => RankAnalysis.Run(new LifeModel(scenario), new StudySettings(1_000, 1, "plain"),
            new RunOptions(), question));
    }

    private static Scenario Only(params Quantity[] uncertain) => FiveLegs.Scenario with
    {
        Inputs = [.. FiveLegs.Scenario.Inputs.Select(i => uncertain.Contains(i.Quantity) ? i : i with
            { Value = new Value.Certain(i.Value.Nominal) })],
    };

    private static RankResult Rank(Scenario scenario, long evaluations) =>
        RankAnalysis.Run(new LifeModel(scenario), new StudySettings(evaluations, 1, "plain"), new RunOptions());

    private static RankedFactor Of(RankResult result, Quantity quantity) =>
        result.Factors.Single(f => f.Factor is ScalarFactor s && s.Input.Quantity == quantity);

    private static (ShareRun Run, LifeShareProblem Problem) Run(Scenario scenario, long evaluations, bool allSubsets)
    {
        var problem = new LifeShareProblem(new LifeModel(scenario), 1, Math.Log(486_590));
        return (ShareRun.Run(problem, evaluations, 1, new RunOptions(), allSubsets), problem);
    }

    private static Interval Share((ShareRun Run, LifeShareProblem Problem) of, int output, string factor) =>
        of.Run.Share(output, of.Problem.Factors.Select((f, i) => (f.Name, i)).Single(x => x.Name == factor).i);

    // Two 95 % intervals (Student, 31 degrees of freedom: 2.04): the difference within four standard errors, and these small.
    private static void AssertClose(Interval a, Interval b)
    {
        double se = Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)) / (2 * 2.04);
        Assert.InRange(se, 0, 0.02);
        Assert.Equal(a.Estimate, b.Estimate, (4 * se) + 1e-9);
    }
}
