using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>What would have become of the same axle without an explanation.</summary>
public sealed class ButForTests
{
    private const string Ratio = "fatigue.damage_ratio";

    /// <summary>
    /// ln life = c - ln ratio + v, v normal: failed at 88,000 km with the ratio 1 instead. Given the failure ln ratio is normal
    /// (conjugate), and the life without it is 88,000 ratio km whatever Miner sum and scatter are. The prior is chosen so that the
    /// posterior is lognormal, median 1.6, sd_ln 0.2: P(it would have passed 120,000 km) = Phi((ln(88 x 1.6) - ln 120)/0.2)
    /// = 0.787925 (scipy).
    /// Theory: Pearl, Causality, 2009, 7.1 and 9.2.
    /// </summary>
    [Fact]
    public void A_lognormal_ratio_has_the_closed_form()
    {
        const double Sigma = 0.4, Km = 88_000, Passes = 120_000;

        // Posterior precision 1/0.04 = 1/Sigma^2 + 1/S^2, S the spread of the scale; the prior's median follows from the mean.
        double scale = 1 / Math.Sqrt((1 / 0.04) - (1 / (Sigma * Sigma)));
        double mean = MeanFor(Math.Log(1.6), Sigma, scale, Km);
        LifeModel model = Model(new Lognormal(Math.Exp(mean), Sigma), scale);
        ButFor told = Run(model, Failed(new LifeEvidence.FailedAt(Km), Passes, new Change.ToValue(Ratio, new Value.Certain(1))), 100_000);
        Within(0.787925, told.Passes);
        Within(StandardNormal.Cumulative(-Math.Log(1.6) / 0.2), told.StillFails); // 88,000 ratio <= 88,000
        Assert.InRange(told.Passes.High - told.Passes.Low, 0.001, 0.02);

        // Held in all but P(ratio < 0.8) = Phi(-3.5), so both together are next to the same.
        Assert.Equal(told.Passes.Estimate, told.HeldAndPasses.Estimate, 0.001);
    }

    /// <summary>Half of the ratio instead of 1: the life is twice what it was, for certain.</summary>
    [Fact]
    public void A_factor_on_what_it_was_gives_a_life_that_is_certain()
    {
        LifeModel model = Model(new Lognormal(1, 0.4), 0.5);
        ButFor Of(double passes, double factor) => Run(model,
            Failed(new LifeEvidence.FailedAt(88_000), passes, new Change.Times(Ratio, factor)), 20_000);
        Assert.Equal((1, 0), (Of(175_999, 0.5).Passes.Estimate, Of(175_999, 0.5).StillFails.Estimate));
        Assert.Equal(0, Of(176_001, 0.5).Passes.Estimate);
        Assert.Equal((0, 1), (Of(100_000, 1).Passes.Estimate, Of(100_000, 1).StillFails.Estimate)); // no other than it was
        Assert.Equal(0, Of(88_001, 1.5).Passes.Estimate);
    }

    /// <summary>
    /// A brute-force twin world: vehicles drawn from the scenario, those kept that failed between the two distances, one input of the
    /// same vehicle changed, and counted. With ageing and further modes of failure too.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_twin_world_that_is_counted_gives_the_same(bool everyMode)
    {
        LifeModel model = everyMode ? new LifeModel(ThreeModes.Scenario) : new LifeModel(FiveLegs.Scenario);
        const string Wall = "axle.wall_mm";
        double[] lives = LivesOf(model, 20_000, null);
        Array.Sort(lives);
        (double from, double to, double passes) = (lives[4_000], lives[8_000], lives[8_800]);
        var thin = new Condition(Wall, double.NegativeInfinity, 6.0, []);
        var evidence = new Evidence
        {
            Life = new LifeEvidence.FailedBetween(from, to),
            WouldHavePassedKm = passes,
            Explanations = [new("thin", null, [thin]) { Instead = [new Change.ToValue(Wall, new Value.Certain(7.0))] }],
        };
        ExplanationShift told = Told(model, evidence, 40_000);

        int column = model.Factors.ColumnNames.IndexOf(Wall);
        double[][] vehicles = model.CreateColumns(200_000);
        double[] before = LivesOf(model, 200_000, vehicles), without = LivesWith(model, vehicles, column, 7.0);
        int[] kept = [.. Enumerable.Range(0, before.Length).Where(i => before[i] >= from && before[i] < to)];
        int[] held = [.. kept.Where(i => thin.Holds(vehicles[column][i]))];
        Near(told.Posterior, held.Length, kept.Length);
        Near(told.ButFor!.Passes, held.Count(i => without[i] > passes), held.Length);
        Near(told.ButFor.StillFails, held.Count(i => without[i] <= to), held.Length);
        Near(told.ButFor.HeldAndPasses, held.Count(i => without[i] > passes), kept.Length);
        Assert.InRange(told.ButFor.Passes.Estimate, 0.02, 0.98);
    }

    /// <summary>Odds after = odds before x the ratio, whatever the prior (Bayes); a stated prior leaves the ratio as it is.</summary>
    [Fact]
    public void The_odds_are_multiplied_by_what_the_prior_does_not_change()
    {
        var thin = new Condition("axle.wall_mm", double.NegativeInfinity, 5.8, []);
        ExplanationShift Of(double? prior) => Told(
            new LifeModel(FiveLegs.Scenario),
            new Evidence { Life = new LifeEvidence.FailedAt(50_000), Explanations = [new("thin", prior, [thin])] }, 20_000);
        ExplanationShift free = Of(null), stated = Of(0.3);
        Interval odds = free.OddsMultiplied!.Value;
        Assert.True(odds.Low > 1 && odds.Low < odds.Estimate && odds.Estimate < odds.High);
        Assert.Equal(odds.Estimate, stated.OddsMultiplied!.Value.Estimate, 1e-6 * odds.Estimate);
        Assert.Equal(Odds(free.Posterior.Estimate) / Odds(free.Prior), odds.Estimate, 1e-9 * odds.Estimate);
        Assert.Equal(stated.Posterior.Estimate, stated.OverPriors.Single(p => p.Prior == 0.3).Posterior.Estimate, 1e-6);

        static double Odds(double p) => p / (1 - p);
    }

    [Fact]
    public void Nothing_is_asked_of_an_axle_that_has_not_failed_or_passed_the_distance_before()
    {
        var model = Model(new Lognormal(1, 0.4), 0.5);
        var instead = new Change.ToValue(Ratio, new Value.Certain(1));
        Assert.Null(Told(model, Failed(new LifeEvidence.Survived(60_000), 90_000, instead), 4_000).ButFor);
        Assert.Null(Told(model, Failed(new LifeEvidence.FailedAt(60_000), 50_000, instead), 4_000).ButFor);
    }

    private static Evidence Failed(LifeEvidence life, double passes, Change instead) => new()
    {
        Life = life,
        WouldHavePassedKm = passes,
        Explanations = [new("worse", null, [new Condition(Ratio, 0.8, double.PositiveInfinity, [])]) { Instead = [instead] }],
    };

    // The prior's mean of ln ratio with which the posterior's is what is wanted: posterior mean = w prior + (1 - w) (c - ln km).
    private static double MeanFor(double wanted, double sigma, double scale, double km)
    {
        double weight = scale * scale / ((scale * scale) + (sigma * sigma));
        double c = Math.Log(LogLinear.MedianKm);
        return (wanted - ((1 - weight) * (c - Math.Log(km)))) / weight;
    }

    // One leg, everything certain but the damage ratio and the scale, whose spread is all the Miner sum's.
    private static LifeModel Model(Distribution ratio, double scale) => new(LogLinear.Scenario with
    {
        Inputs = [.. LogLinear.Scenario.Inputs.Select(i =>
            i.Name == Ratio ? i with { Value = new Value.Uncertain(ratio, Knowledge.Unknown) }
            : i.Quantity == Quantities.MinerSum ? i with { Value = new Value.Uncertain(new Lognormal(1, scale), Knowledge.Varies) }
            : i.Quantity == Quantities.LifeScatter ? i with { Value = new Value.Certain(0) } : i)],
    });

    private static ButFor Run(LifeModel model, Evidence evidence, long evaluations) => Told(model, evidence, evaluations).ButFor!;

    private static ExplanationShift Told(LifeModel model, Evidence evidence, long evaluations) => CausesAnalysis
        .Run(model, evidence, new StudySettings(evaluations, 3, "plain"), new RunOptions { Threads = 2 })
        .Explanations.Single(e => e.Names.Length == 1);

    private static double[] LivesOf(LifeModel model, int rows, double[][]? keep)
    {
        SamplingPlan plan = SamplingPlan.FromName("plain", rows);
        Workspace workspace = model.CreateWorkspace(rows);
        double[][] values = keep ?? model.CreateColumns(rows);
        model.Draw(plan, 77, keep is null ? "lives" : "twins", 0, rows, workspace, values);
        model.Evaluate(values, rows, workspace);
        return [.. workspace.LifeKm[..rows]];
    }

    private static double[] LivesWith(LifeModel model, double[][] values, int column, double to)
    {
        double[][] changed = [.. values];
        changed[column] = [.. values[column].Select(_ => to)];
        Workspace workspace = model.CreateWorkspace(values[0].Length);
        model.Evaluate(changed, values[0].Length, workspace);
        return workspace.LifeKm;
    }

    // Four standard errors of both: the interval's half width is two, and a count's is binomial.
    private static void Near(Interval told, int count, int of)
    {
        double p = count / (double)of, error = (told.High - told.Low) / 4;
        Assert.Equal(p, told.Estimate, 4 * Math.Sqrt((error * error) + (p * (1 - p) / of)));
    }

    private static void Within(double expected, Interval told) =>
        Assert.Equal(expected, told.Estimate, told.High - told.Low); // two half widths are four standard errors
}
