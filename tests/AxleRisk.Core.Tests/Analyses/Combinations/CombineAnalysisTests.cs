using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

public sealed class CombineAnalysisTests
{
    private static readonly Scenario At200 = FiveLegs.Scenario with { RequiredKm = 200_000 };

    // Only Miner sum and scatter are uncertain, so that ln life is the sum of two normals; expected by quadrature over the
    // Miner sum's lower fifth of P(failure and scatter in its lower fifth | Miner sum).
    [Theory]
    [InlineData("plain")]
    [InlineData("latin-hypercube")]
    public void Ranges_of_the_scale_factors_agree_with_quadrature(string sampling)
    {
        Scenario scenario = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
                i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                    { Value = new Value.Certain(i.Value.Nominal) })],
            RequiredKm = 200_000,
        };
        CombineResult result = Run(scenario, 40_000, sampling);
        double sdMiner = 0.29, sdScatter = 0.20 * Math.Log(10);
        double Threshold(double z) => (Math.Log(200_000 / 486_590.0) - (sdMiner * z)) / sdScatter; // scatter below it fails
        double z20 = StandardNormal.Quantile(0.2);
        double both = Lower(z => Math.Min(0.2, StandardNormal.Cumulative(Threshold(z))), z20) / 0.04;
        double miner = Lower(z => StandardNormal.Cumulative(Threshold(z)), z20) / 0.2;
        PairEffect pair = Assert.Single(result.Pairs);
        AssertInside(both, pair.Together);
        AssertInside(miner, result.Ranges.Single(r => r.Factor.Name == "fatigue.miner_sum").Probability);
        Assert.All(result.Ranges, r => Assert.Equal(RangePart.Below, r.Part));
        Assert.Equal(["fatigue.log10_life_scatter", "fatigue.miner_sum"], result.Combinations[0].Members.Select(m => m.Column).Order());
    }

    // P(F | 1) P(F | 2) ... / P(F)^(k - 1), of the result's own figures.
    [Fact]
    public void Multiplied_is_what_the_members_would_give_each_by_its_own_factor()
    {
        CombineResult result = Run(At200, 30_000, "plain");
        double all = result.Probability.Estimate;
        Assert.NotEmpty(result.Combinations);
        Assert.All(result.Combinations, c =>
        {
            double product = all * c.Members.Select(m => result.Ranges
                .Single(r => (r.Column, r.Part, r.Limit) == (m.Column, m.Part, m.Limit)).Probability.Estimate / all)
                .Aggregate(1.0, (a, b) => a * b);
            Assert.Equal(product, c.Multiplied.Estimate, 1e-9 * product);
        });
    }

    [Fact]
    public void Weighted_and_counted_failures_give_the_same_combinations_their_probability()
    {
        CombineResult exact = Run(At200, 30_000, "plain");
        Scenario scattered = FiveLegs.With(
            Quantities.LifeScatter, new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies)) with
        { RequiredKm = 200_000 };
        CombineResult counted = Run(scattered, 30_000, "plain");
        Assert.True(exact.IsConditional);
        Assert.False(counted.IsConditional);
        AssertClose(exact.Probability, counted.Probability);
        foreach (AdverseRange range in exact.Ranges.Where(r => r.Probability.Low > exact.Probability.High))
        {
            AssertClose(range.Probability, counted.Ranges.Single(r => r.Column == range.Column).Probability);
        }
    }

    [Fact]
    public void Thin_walls_and_rough_roads_are_the_adverse_ends()
    {
        CombineResult result = Run(At200, 20_000, "plain");
        RangePart PartOf(string name) => result.Ranges.Single(r => r.Column == name).Part;
        Assert.Equal(RangePart.Below, PartOf("axle.wall_mm"));
        Assert.Equal(RangePart.Above, PartOf("use.roughness_factor"));
        Assert.Equal(RangePart.Above, PartOf("fatigue.stress_factor"));
        Assert.NotEmpty(result.Combinations);
        Assert.All(result.Combinations, c =>
        {
            Assert.InRange(c.Rows, result.Searched.Limits.LeastRows, int.MaxValue);
            Assert.InRange(c.Coverage.Estimate, result.Searched.Limits.LeastCoverage, 1);
            Assert.Equal(c.Lift.Estimate, c.Probability.Estimate / result.Probability.Estimate, 1e-12);
            Assert.Equal(c.Coverage.Estimate, c.Lift.Estimate * c.Likelihood, 1e-9);
        });
    }

    [Fact]
    public void Correlated_factors_are_marked_and_play_as_one()
    {
        CombineResult result = Run(At200 with { Correlations = [new RankCorrelation("axle.wall_mm", "fatigue.stress_factor", -0.7)] },
            20_000, "plain");
        PairEffect pair = result.Pairs.Single(p => p.AreCorrelated);
        Assert.Equal(["axle.wall_mm", "fatigue.stress_factor"], new[] { pair.First.Column, pair.Second.Column }.Order());
        Assert.True(pair.Likelihood > 0.08); // 0.04 if they were independent
        Assert.Contains(result.Interactions, i => i.First.Contains(" + ", StringComparison.Ordinal)
            || i.Second.Contains(" + ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_small_run_spends_no_more_than_it_was_given()
    {
        CombineResult result = CombineAnalysis.Run(
            new LifeModel(At200), new StudySettings(2000, 1, "plain"), new CombineLimits(), new RunOptions());
        Assert.InRange(result.Run.Evaluations, 1000, 2000);
        Assert.NotEmpty(result.Interactions);
    }

    [Fact]
    public void Legs_of_the_road_mix_are_ranges_of_their_share()
    {
        CombineResult result = Run(At200 with { MixConcentration = 20 }, 20_000, "plain");
        AdverseRange[] shares = [.. result.Ranges.Where(r => r.Factor is MixFactor)];
        Assert.Equal(5, shares.Length);
        Assert.Equal(RangePart.Above, shares[^1].Part); // more of the worst track
        Assert.All(result.Combinations, c => Assert.InRange(c.Members.Count(m => m.Factor is MixFactor), 0, 1));
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("sobol")]
    public void The_number_of_threads_changes_no_digit(string sampling)
    {
        var model = new LifeModel(At200);
        var settings = new StudySettings(30_001, 4, sampling);
        CombineResult one = CombineAnalysis.Run(model, settings, new CombineLimits(), new RunOptions { Threads = 1 });
        CombineResult many = CombineAnalysis.Run(model, settings, new CombineLimits(), new RunOptions { Threads = 4 });
        Assert.Equal(one.Ranges.Select(r => (r.Column, r.Limit, r.Probability)),
            many.Ranges.Select(r => (r.Column, r.Limit, r.Probability)));
        Assert.Equal(one.Pairs.Select(p => (p.Together, p.Ratio)), many.Pairs.Select(p => (p.Together, p.Ratio)));
        Assert.Equal(one.Interactions, many.Interactions);
        Assert.Equal(one.Combinations.Select(c => (c.Probability, c.Lift)), many.Combinations.Select(c => (c.Probability, c.Lift)));
    }

    [Fact]
    public void A_run_ended_early_says_so()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        CombineResult result = CombineAnalysis.Run(
            new LifeModel(At200), new StudySettings(4000, 1, "plain"), new CombineLimits(), new RunOptions { Cancellation = source.Token });
        Assert.True(result.Run.IsPartial);
        Assert.Empty(result.Combinations);
    }

    private static CombineResult Run(Scenario scenario, long evaluations, string sampling) =>
        CombineAnalysis.Run(
            new LifeModel(scenario), new StudySettings(evaluations, 1, sampling), new CombineLimits { StrongestFactors = 4 },
                new RunOptions());

    /// <summary>
    /// Integral of f times the normal density from -9 to a point by the midpoint rule; 20,000 panels, kinks and all within 1e-6.
    /// </summary>
    private static double Lower(Func<double, double> f, double to)
    {
        const int Panels = 20_000;
        double h = (to + 9) / Panels;
        return Enumerable.Range(0, Panels).Select(i => -9 + ((i + 0.5) * h)).Sum(z => f(z) * StandardNormal.Density(z)) * h;
    }

    // A 95 % interval widened to four standard errors (Student, 15 degrees of freedom or more: 2.13 at most).
    private static void AssertInside(double expected, Interval interval) =>
        Assert.Equal(expected, interval.Estimate, Math.Max(interval.High - interval.Low, 1e-9));

    private static void AssertClose(Interval a, Interval b)
    {
        double se = Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)) / (2 * 2.0);
        Assert.Equal(a.Estimate, b.Estimate, 4 * se);
    }
}
