using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

public sealed class CausesAnalysisTests
{
    private static readonly double Ln10 = Math.Log(10);

    /// <summary>The benchmark with all but Miner sum and S-N scatter certain.</summary>
    private static Scenario ScaleOnly => FiveLegs.Scenario with
    {
        Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
            i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                { Value = new Value.Certain(i.Value.Nominal) })],
    };

    /// <summary>The benchmark with the category of the weld unknown as well.</summary>
    private static Scenario WithCategories =>
        FiveLegs.Scenario with { Detail = new Detail("DNV-RP-C203", ["E", "F3", "W1"], [0.6, 0.3, 0.1]) };

    [Theory]
    [InlineData(100_000)]
    [InlineData(2_000_000)]
    public void Given_the_damage_the_scale_of_a_failure_is_shared_by_its_variances(double km)
    {
        var model = new LifeModel(ScaleOnly);
        CausesResult result = Run(model, new Evidence { Life = new LifeEvidence.FailedAt(km) }, 40_000);
        double z = Score(model, km);

        // ln Miner sum and ln 10 times the scatter are normal with variances v and w; given their sum they are normal with
        // mean v/(v+w) times it and variance v w / (v+w).
        double v = 0.29 * 0.29, w = Math.Pow(0.2 * Ln10, 2), spread = Math.Sqrt(v * w / (v + w));
        double sum = z * Math.Sqrt(v + w);
        Percentiles miner = Find(result, "fatigue.miner_sum").Posterior!.Value;
        Percentiles scatter = Find(result, "fatigue.log10_life_scatter").Posterior!.Value;

        // About 38,000 rows of equal weight: four standard errors of a 5 % point are 4 * 2.11 / 195 = 0.043 spreads.
        Assert.Equal(sum * v / (v + w), Math.Log(miner.Median), 0.05 * spread);
        Assert.Equal((sum * v / (v + w)) - (1.6449 * spread), Math.Log(miner.Low), 0.05 * spread);
        Assert.Equal(sum * w / (v + w), Ln10 * scatter.Median, 0.05 * spread);
        Assert.Equal((sum * w / (v + w)) + (1.6449 * spread), Ln10 * scatter.High, 0.05 * spread);
    }

    [Fact]
    public void The_two_parts_of_the_scale_share_one_failure()
    {
        var model = new LifeModel(ScaleOnly);
        const double Km = 150_000;
        double v = 0.29 * 0.29, w = Math.Pow(0.2 * Ln10, 2), share = v / (v + w), z = Score(model, Km);

        // With z the score of the sum and e standard normal the scores are sqrt(v) z + sqrt(w) e and sqrt(w) z - sqrt(v) e
        // (v + w = 1): both below their tenth point for e in one interval.
        double tenth = -PosteriorSums.TenthScore, a = Math.Sqrt(share), b = Math.Sqrt(1 - share);
        double expected = StandardNormal.Cumulative((tenth - (a * z)) / b) - StandardNormal.Cumulative(((b * z) - tenth) / a);
        CausesResult result = Run(model, new Evidence
        {
            Life = new LifeEvidence.FailedAt(Km),
            Explanations =
            [
                new("weak steel", null, [new Condition("fatigue.miner_sum", double.NegativeInfinity, Math.Exp(0.29 * tenth), [])]),
                new("weak weld", null, [new Condition("fatigue.log10_life_scatter", double.NegativeInfinity, 0.2 * tenth, [])]),
            ],
        }, 40_000);
        double both = result.Explanations.Single(e => e.Names.Length == 2).Posterior.Estimate;
        Assert.InRange(expected, 0.02, 0.5);
        Assert.Equal(expected, both, 4 * Math.Sqrt(expected * (1 - expected) / result.EffectiveSampleSize));
    }

    [Fact]
    public void Survival_cuts_the_lower_tail_of_the_scale_off()
    {
        var model = new LifeModel(ScaleOnly);
        double km = Math.Exp(model.Scale.Mu) * 1.2 / DamagePerKm(model);
        double z = Score(model, km);
        CausesResult result = Run(model, new Evidence { Life = new LifeEvidence.Survived(km) }, 40_000);

        // Mean of a normal cut off below z is phi(z) / (1 - Phi(z)); scatter has share w/(v+w) of the variance, and its own
        // median follows the sum of a cut and a whole normal, so the state of it is checked by its adverse tenth instead:
        // P(scatter low | survived) by quadrature over the sum.
        double v = 0.29 * 0.29, w = Math.Pow(0.2 * Ln10, 2), share = w / (v + w);
        double expected = Quadrature(z,
            t => StandardNormal.Cumulative((-PosteriorSums.TenthScore - (Math.Sqrt(share) * t)) / Math.Sqrt(1 - share)));
        StateShift tenth = Find(result, "fatigue.log10_life_scatter").States[0];
        Assert.Equal(expected, tenth.Posterior.Estimate, 4 * Math.Sqrt(expected / 38_000) + 0.0005);
    }

    [Fact]
    public void A_measurement_alone_gives_the_normal_posterior()
    {
        CausesResult result = Run(
            new LifeModel(FiveLegs.Scenario), new Evidence { Measured = [new("axle.wall_mm", 5.5, 0.1)] }, 40_000);

        // Prior normal(6, 0.25), error 0.1: precision 16 + 100, mean (16*6 + 100*5.5)/116.
        Percentiles wall = Find(result, "axle.wall_mm").Posterior!.Value;
        double spread = Math.Sqrt(1 / 116.0), error = (4 * 2.11 * spread / Math.Sqrt(result.EffectiveSampleSize)) + (0.005 * 0.25);
        Assert.Equal(646 / 116.0, wall.Median, error);
        Assert.Equal((646 / 116.0) - (1.6449 * spread), wall.Low, error);
        Assert.Equal(1, Find(result, "vehicle.tyre_n_per_mm").States[0].Times.Estimate, 0.15);
        Assert.Null(result.FailureBefore);
    }

    [Fact]
    public void A_known_state_is_the_scenario_with_that_state()
    {
        var failed = new LifeEvidence.FailedAt(60_000);
        CausesResult known = Run(new LifeModel(WithCategories), new Evidence { Life = failed, Known = [new("detail.category", 1)] },
            20_000);
        CausesResult certain = Run(
            new LifeModel(FiveLegs.Scenario with { Detail = new Detail("DNV-RP-C203", ["F3"], [1]) }), new Evidence { Life = failed },
                20_000);
        StateShift f3 = Find(known, "detail.category").States.Single(s => s.Name == "F3");
        Assert.Equal(1, f3.Posterior.Estimate);
        Assert.Equal(1 / 0.3, f3.Times.Estimate, 1e-9);
        Assert.True(known.Causes[^1].IsKnown);
        foreach (string name in new[] { "fatigue.stress_factor", "use.roughness_factor", "axle.wall_mm" })
        {
            Interval a = Find(known, name).States[0].Posterior, b = Find(certain, name).States[0].Posterior;

            // Intervals of 95 % reach 2 standard errors; four of the difference's.
            Assert.Equal(a.Estimate, b.Estimate, 2 * Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)));
        }
    }

    [Fact]
    public void Counted_lives_agree_with_the_exact_likelihood()
    {
        // Truncated so far out that nothing changes, but no longer lognormal by name.
        var cut = new Value.Uncertain(new Truncated(new Lognormal(1, 0.29), 1e-4, 1e4), Knowledge.Varies);
        var evidence = new Evidence { Life = new LifeEvidence.FailedBetween(40_000, 60_000), Explanations = Explanations };
        CausesResult exact = Run(new LifeModel(FiveLegs.Scenario), evidence, 40_000);
        CausesResult counted = Run(new LifeModel(FiveLegs.With(Quantities.MinerSum, cut)), evidence, 40_000);
        Assert.True(exact.IsConditional);
        Assert.False(counted.IsConditional);
        foreach (Cause cause in exact.Causes)
        {
            Interval a = cause.States[0].Posterior, b = Find(counted, cause.Name).States[0].Posterior;
            Assert.Equal(a.Estimate, b.Estimate, 2 * Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)));
        }

        foreach (ExplanationShift e in exact.Explanations)
        {
            Interval a = e.Posterior, b = counted.Explanations.Single(x => x.Names.SequenceEqual(e.Names)).Posterior;
            Assert.Equal(a.Estimate, b.Estimate, 2 * Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)));
        }
    }

    [Fact]
    public void Explanations_come_with_their_pairs_and_nothing_unusual_last()
    {
        CausesResult result = Run(
            new LifeModel(FiveLegs.Scenario), new Evidence { Life = new LifeEvidence.FailedAt(50_000), Explanations = Explanations },
                20_000);
        Assert.Equal([1, 1, 2, 0], result.Explanations.Select(e => e.Names.Length));
        ExplanationShift thin = result.Explanations.Single(e => e.Names is ["thin"]);
        ExplanationShift nothing = result.Explanations[^1], both = result.Explanations[2];
        ExplanationShift rough = result.Explanations.Single(e => e.Names is ["rough"]);
        Assert.Equal(0.2, thin.Prior, 1e-9); // as stated
        Assert.Equal(0.8 * (1 - rough.Prior), nothing.Prior, 0.001); // independent; 131,072 low-discrepancy draws
        Assert.Equal(1, nothing.Posterior.Estimate + thin.Posterior.Estimate + rough.Posterior.Estimate - both.Posterior.Estimate, 1e-9);
        Assert.True(rough.Posterior.Low > rough.Prior);
    }

    [Fact]
    public void Evidence_the_scenario_does_not_allow_is_refused_with_what_to_do()
    {
        StudyException refused = Assert.Throws<StudyException>(() =>
            Run(new LifeModel(FiveLegs.Scenario), new Evidence { Life = new LifeEvidence.FailedAt(1e-3) }, 4000));
        Assert.Contains("--evaluations", refused.Message, StringComparison.Ordinal);
        Assert.Contains("--failed-between", refused.Message, StringComparison.Ordinal);
        Assert.Throws<StudyException>(() => Run(new LifeModel(FiveLegs.Scenario), Evidence.None, 4000));
    }

    [Theory]
    [InlineData("W3", true)]
    [InlineData("F", false)]
    public void An_explanation_that_a_known_state_decides_is_settled_and_the_others_are_weighed(string known, bool holds)
    {
        Detail detail = FiveLegs.Scenario.Detail with { Categories = ["F", "W3"], Weights = [0.7, 0.3] };
        var model = new LifeModel(FiveLegs.Scenario with { Detail = detail });
        var root = new Explanation("root", 0.2, [new Condition("detail.category", double.NegativeInfinity, double.PositiveInfinity, [1])]);
        var mixed = new Explanation("thin root", null, [.. root.When, .. Explanations[0].When]);
        var evidence = new Evidence
        {
            Life = new LifeEvidence.FailedAt(100_000),
            Known = [new KnownState("detail.category", detail.Categories.IndexOf(known))],
            Explanations = Explanations,
        };
        CausesResult without = Run(model, evidence, 8_000);
        CausesResult result = Run(model, evidence with { Explanations = [root, .. Explanations] }, 8_000);
        ExplanationShift settled = Assert.Single(result.Explanations, e => e.Settled is not null);
        Assert.Equal(("root", holds), (settled.Names.Single(), settled.Settled!.Value));
        Assert.Equal(0.2, settled.Prior, 1e-9);
        Assert.Equal(holds ? 1 : 0, settled.Posterior.Estimate);

        // Independent of the others, it leaves them as they are; in no pair, and nothing unusual is about the others alone.
        ExplanationShift[] weighed = [.. result.Explanations.Where(e => e.Settled is null)];
        Assert.Equal(without.Explanations.Select(e => string.Join("+", e.Names)), weighed.Select(e => string.Join("+", e.Names)));
        Assert.All(without.Explanations.Zip(weighed), x => Assert.Equal(x.First.Posterior.Estimate, x.Second.Posterior.Estimate, 1e-3));
        Assert.True(weighed[^1].Names.IsEmpty && weighed[^1].Posterior.Estimate > 0.01);

        // A condition beside the known state leaves it open, unless the state rules it out.
        Assert.Equal(holds ? null : false, mixed.SettledBy(evidence.Known));
    }

    [Fact]
    public void An_explanation_that_never_holds_is_refused()
    {
        var never = new Evidence
        {
            Life = new LifeEvidence.FailedAt(50_000),
            Explanations = [new("thin", null, [new Condition("axle.wall_mm", double.NegativeInfinity, 3, [])])],
        };
        Assert.Contains("never holds", Assert.Throws<StudyException>(() => Run(new LifeModel(FiveLegs.Scenario), never, 4000)).Message,
            StringComparison.Ordinal);
    }

    private static ImmutableArray<Explanation> Explanations { get; } =
    [
        new("thin", 0.2, [new Condition("axle.wall_mm", double.NegativeInfinity, 5.8, [])]),
        new("rough", null, [new Condition("use.roughness_factor", 1.4, double.PositiveInfinity, [])]),
    ];

    private static CausesResult Run(LifeModel model, Evidence evidence, long evaluations) =>
        CausesAnalysis.Run(model, evidence, new StudySettings(evaluations, 3, "plain"), new RunOptions { Threads = 2 });

    private static Cause Find(CausesResult result, string name) => result.Causes.Single(c => c.Name == name);

    private static double Score(LifeModel model, double km) => model.Scale.Standardised(km, DamagePerKm(model));

    private static double DamagePerKm(LifeModel model)
    {
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Nominal[0];
        }

        model.Evaluate(values, 1, workspace);
        return workspace.DamagePerKm[0];
    }

    /// <summary>The mean of f(t) over a standard normal t above z, by the midpoint rule.</summary>
    private static double Quadrature(double z, Func<double, double> f)
    {
        double sum = 0, total = 0;
        for (double t = z + 0.0005; t < 9; t += 0.001)
        {
            sum += StandardNormal.Density(t) * f(t);
            total += StandardNormal.Density(t);
        }

        return sum / total;
    }
}
