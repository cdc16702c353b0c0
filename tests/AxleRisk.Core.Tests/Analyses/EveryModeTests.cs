using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Analyses.Trips;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>
/// Every analysis with every mode of failure, where all is certain but the chances: survival is the product of normal,
/// exponential and Weibull.
/// </summary>
public sealed class EveryModeTests
{
    private const double Km = 30_000;

    private static readonly Scenario Certain = CertainModes.Scenario with { RequiredKm = Km };

    [Theory]
    [InlineData("sobol")]
    [InlineData("plain")]
    public void A_comparison_has_the_closed_form_of_both(string sampling)
    {
        Scenario better = Certain with
        {
            Inputs = [.. Certain.Inputs.Select(i => i.Quantity == Quantities.BearingRating ? i with
            { Value = new Value.Certain(20) } : i)]
        };
        ComparisonResult result = Comparison.Run([new LifeModel(Certain), new LifeModel(better)], Km,
            new StudySettings(1_024, 1, sampling), new RunOptions());
        double[] exact = [.. new[] { Certain, better }.Select(s => Failed(s, Km))];
        Assert.True(result.IsConditional);
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal(exact[i], result.Cases[i].Probability.Estimate, 1e-9);
            Assert.Equal(0.1, Failed(i == 0 ? Certain : better, result.Cases[i].B10Km.Estimate), 2e-5); // between distances a cubic
        }

        Assert.Equal(exact[1] - exact[0], result.Cases[1].Change!.Difference.Estimate, 1e-9);
        Assert.InRange(result.Cases[1].Change!.Difference.High - result.Cases[1].Change!.Difference.Low, 0, 1e-9);
    }

    // Counting stands beside: 20,000 plain rows, the standard error of a difference of paired counts is below sqrt(2 * 0.25 /
    // 20000) = 0.005; four of them.
    [Fact]
    public void A_comparison_of_uncertain_vehicles_is_as_counting_has_it()
    {
        Scenario[] cases = [ThreeModes.Scenario, Counted(ThreeModes.Scenario)];
        ComparisonResult[] results =
            [.. cases.Select(s => Comparison.Run([new LifeModel(s), new LifeModel(Stronger(s))], Km, new StudySettings(20_000, 1, "plain"),
            new RunOptions()))];
        Assert.True(results[0].IsConditional);
        Assert.False(results[1].IsConditional);
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal(results[0].Cases[i].Probability.Estimate, results[1].Cases[i].Probability.Estimate, 0.02);
        }

        Assert.Equal(results[0].Cases[1].Change!.Difference.Estimate, results[1].Cases[1].Change!.Difference.Estimate, 0.02);
        double Width(ComparisonResult r) => r.Cases[1].Change!.Difference is var d ? d.High - d.Low : 0;
        Assert.True(Width(results[0]) < Width(results[1]) / 2);
    }

    // P = E[1 - exp(-rate(strength) km)] over the lognormal strength by the midpoint rule; the other modes are below 1e-15.
    [Fact]
    public void A_rare_event_has_the_expected_yields()
    {
        Scenario strong = TripModesTests.Strong(Certain);
        const double km = 10;
        double exact = TripModesTests.ExpectedYields(strong, km);
        RareEventResult result = RareEventAnalysis.Run(new LifeModel(strong), km, new RareEventSettings(1), new RunOptions());
        Assert.InRange(result.Cov, 0, 0.05);
        Assert.Equal(exact, result.Probability.Estimate, 4 * result.Cov * exact);
        Assert.Equal(["axle.largest_load_scatter", "axle.yield_mpa"], result.States[0].DesignPoints[0].Coordinates.Select(c => c.Name)
            .Order());
    }

    // P(a limit L in its lower tenth | evidence), by definition of conditional probability: of P(L q, all modes survive a, one
    // does not survive b), which
    // is P(a L q) times the others' survival of a less the same of b. About 19,000 rows of equal weight: four standard errors of
    // 0.5 are 0.0145.
    [Theory]
    [InlineData(15_000, 30_000)]
    [InlineData(0, 30_000)]
    [InlineData(20_000, double.PositiveInfinity)]
    [InlineData(30_000, 30_000)] // failed at
    public void The_limits_given_evidence_of_the_life_have_the_closed_form(double from, double to)
    {
        Scenario scenario = Change(Certain, Quantities.MinerSum, _ => new Value.Certain(1));
        (double damage, double yields, double lives) = CertainModes.Rates(scenario);
        LifeEvidence evidence = from == to ? new LifeEvidence.FailedAt(from) : double.IsInfinity(to)
            ? new LifeEvidence.Survived(from) : new LifeEvidence.FailedBetween(from, to);
        CausesResult result = CausesAnalysis.Run(new LifeModel(scenario), new Evidence { Life = evidence },
            new StudySettings(20_000, 1, "plain"), new RunOptions());
        Assert.True(result.IsConditional);
        (double a, double b) = from == to ? (from * (1 - 1e-6), to * (1 + 1e-6)) : (from, to);
        var survivals = new Dictionary<string, Func<double, double>>
        {
            ["fatigue.log10_life_scatter"] = km => StandardNormal.Upper(Math.Log(km * damage) / (0.2 * Math.Log(10))),
            ["axle.largest_load_scatter"] = km => Math.Exp(-km * yields),
            ["bearing.life_scatter"] = km => CertainModes.Bearing(km * lives),
        };
        double All(double km) => double.IsInfinity(km) ? 0 : survivals.Values.Aggregate(1.0, (p, s) => p * s(km));
        foreach ((string name, Func<double, double> own) in survivals)
        {
            double Part(double km) => double.IsInfinity(km) ? 0 : All(km) / own(km) * Math.Max(0, own(km) - 0.9);
            Cause cause = result.Causes.Single(c => c.Name == name);
            Assert.False(cause.IsHighAdverse);
            Assert.Equal((Part(a) - Part(b)) / (All(a) - All(b)), cause.States[0].Posterior.Estimate, 0.0145);
        }
    }

    // Rows of a certain vehicle differ in nothing but their chances, so that P(fails | a limit in its lower fifth) is 1 - S of
    // the others times
    // P(limit > used | lower fifth), exactly but for the sampling of that limit: 5,000 rows in the fifth, four standard errors of
    // 0.5 are 0.028.
    [Fact]
    public void A_combination_knows_the_limits_it_speaks_of()
    {
        Scenario scenario = Change(Certain, Quantities.MinerSum, _ => new Value.Certain(1)) with { RequiredKm = 20_000 };
        (double damage, double yields, double lives) = CertainModes.Rates(scenario);
        CombineResult result = CombineAnalysis.Run(new LifeModel(scenario), new StudySettings(100_000, 1, "plain"), new CombineLimits(),
            new RunOptions());
        double[] survival = [StandardNormal.Upper(Math.Log(20_000 * damage) / (0.2 * Math.Log(10))), Math.Exp(-20_000 * yields),
            CertainModes.Bearing(20_000 * lives)];
        double all = survival[0] * survival[1] * survival[2];
        Assert.True(result.IsConditional);
        Assert.Equal(1 - all, result.Probability.Estimate, 1e-9);
        string[] names = ["fatigue.log10_life_scatter", "axle.largest_load_scatter", "bearing.life_scatter"];
        for (int mode = 0; mode < 3; mode++)
        {
            double left = Math.Max(0, survival[mode] - 0.8) / 0.2;
            Assert.Equal(1 - (all / survival[mode] * left), result.Ranges.Single(r => r.Column == names[mode]).Probability.Estimate, 0.028);
        }

        // Second order of two chances: Cov(E[F | both]) less its parts, over Var F; E[S | two limits] is a product, and Var of an
        // indicator is S(1 - S).
        InteractionPair pair = result.Interactions.Single(i => i.First + i.Second is var both
            && both.Contains("largest_load", StringComparison.Ordinal) && both.Contains("bearing", StringComparison.Ordinal));
        double exact = survival[0] * survival[0] * survival[1] * (1 - survival[1]) * survival[2] * (1 - survival[2]) / (all * (1 - all));
        Assert.Equal(exact, pair.SecondOrder.Estimate, 1e-9);
    }

    // A wall that is gone fails in fatigue and by yield at once: two infinite hazards, of which none is left to tell.
    [Fact]
    public void Modes_that_are_both_certain_to_have_failed_leave_one_failure()
    {
        var rusted = new LifeModel(ThreeModes.With(Certain, (Quantities.CorrosionLoss, new Value.Certain(20))));
        ComparisonResult compared = Comparison.Run([rusted, new LifeModel(Certain)], Km, new StudySettings(1_024, 1, "sobol"),
            new RunOptions());
        Assert.Equal(1, compared.Cases[0].Probability.Estimate, 1e-12);
        Assert.Equal(Failed(Certain, Km) - 1, compared.Cases[1].Change!.Difference.Estimate, 1e-9);
        CombineResult combined = CombineAnalysis.Run(rusted, new StudySettings(4_096, 1, "sobol"), new CombineLimits(), new RunOptions());
        Assert.All(combined.Ranges, r => Assert.Equal(1, r.Probability.Estimate, 1e-12));
        var evidence = new Evidence { Life = new LifeEvidence.FailedBetween(0, Km) };
        CausesResult causes = CausesAnalysis.Run(rusted, evidence, new StudySettings(4_096, 1, "plain"), new RunOptions());
        Assert.Equal(1, causes.EffectiveSampleSize / causes.Rows, 1e-9); // certain evidence tells nothing apart
    }

    private static double Failed(Scenario scenario, double km) =>
        CertainModes.Rates(scenario) is var (damage, yields, lives)
            ? 1 - CertainModes.Survival(km * damage, km * yields, km * lives) : double.NaN;

    private static Scenario Stronger(Scenario scenario) => Change(scenario, Quantities.BearingRating, _ => new Value.Certain(18));

    // The same distribution by another name: a normal scatter cut off where nothing is left, so that nothing is averaged.
    private static Scenario Counted(Scenario scenario) =>
        Change(scenario, Quantities.LifeScatter, v => v is Value.Uncertain { Distribution: Normal n } u
        ? u with { Distribution = new Truncated(n, n.Mean - 9 * n.StandardDeviation, n.Mean + 9 * n.StandardDeviation) } : v);

    private static Scenario Change(Scenario scenario, Quantity quantity, Func<Value, Value> change) =>
        scenario with { Inputs = [.. scenario.Inputs.Select(i => i.Quantity == quantity ? i with { Value = change(i.Value) } : i)] };
}
