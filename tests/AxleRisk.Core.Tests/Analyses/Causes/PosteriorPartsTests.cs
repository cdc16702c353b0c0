using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Analyses.Fleets;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>The parts of the weighing of causes, each on numbers made by hand.</summary>
public sealed class PosteriorPartsTests
{
    private static readonly LinearGaussian TwoNormals = new([1.0, 0.5], 1, 0);

    // Three groups of two rows; scores at the lower edges of bins.
    private static readonly (double Score, double Weight)[][] Groups =
        [[(-0.5, 1), (2, 3)], [(0.25, 2), (1.5, 2)], [(-2, 1), (3, 1)]];

    [Fact]
    public void Sums_are_those_of_the_weights()
    {
        var sums = new PosteriorSums([.. Groups.Select(Tally)]);
        Assert.Equal(6, sums.Rows);
        Assert.Equal(10.0 * 10 / (1 + 9 + 4 + 4 + 1 + 1), sums.EffectiveSize, 1e-13);
        Assert.Equal(0.3, sums.GreatestShare, 1e-15);
        Assert.Equal([1.0, 3, 2, 2, 1, 1], sums.Patterns.SelectMany(p => p.Where(w => w > 0)));

        // Above 1: 3 of 4, 2 of 4, 1 of 2; without each group 3/6, 4/6, 5/8: the jackknife by hand, Student with 2 degrees of
        // freedom 4.3027.
        Interval above = sums.Tail(0, high: true, 1);
        double[] left = [3 / 6.0, 4 / 6.0, 5 / 8.0];
        double error = Math.Sqrt(2 / 3.0 * left.Sum(x => Math.Pow(x - left.Average(), 2)));
        Assert.Equal(0.6, above.Estimate, 1e-14);
        Assert.Equal(Math.Max(0, 0.6 - (4.30265273 * error)), above.Low, 1e-8);
        Assert.Equal(Math.Min(1, 0.6 + (4.30265273 * error)), above.High, 1e-8);
        Assert.Equal(0.2, sums.Tail(0, high: false, 0.1).Estimate, 1e-14); // below -0.1
        Assert.Equal(0.1, sums.Tail(0, high: false, 1).Estimate, 1e-14);

        // Half a bin counts half: the bin of the score 2 reaches from 2 to 2.01.
        Assert.Equal(0.1 + (0.3 / 2), sums.Tail(0, high: true, 2.005).Estimate, 1e-10);
    }

    [Fact]
    public void A_quantile_stands_where_its_share_of_the_weight_lies_below()
    {
        var sums = new PosteriorSums([.. Groups.Select(Tally)]);

        // In order: -2 (0.1), -0.5 (0.1), 0.25 (0.2), 1.5 (0.2), 2 (0.3), 3 (0.1), each spread over its bin of 0.01.
        Assert.Equal([-2 + 0.005, -0.5 + 0.005, 0.25 + 0.005, 1.5 + 0.005, 2 + 0.005, 3 + 0.005],
            new[] { 0.05, 0.15, 0.3, 0.5, 0.75, 0.95 }.Select(p => sums.QuantileScore(0, p)), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(3.01, sums.QuantileScore(0, 1), 1e-9);
        Assert.Equal((-9, 9), (PosteriorTally.Edge(0), PosteriorTally.Edge(PosteriorTally.Bins)));
    }

    // Scores beyond the bins are kept in the outermost, from -9 to -8.99 and from 8.99 to 9.
    [Fact]
    public void The_outermost_bins_hold_all_beyond_them()
    {
        var sums = new PosteriorSums([.. Enumerable.Repeat(Tally([(-9.5, 1), (0, 6), (12, 3)]), 2)]);
        Assert.Equal((0.1, 0.3), (sums.Tail(0, high: false, 8.99).Estimate, sums.Tail(0, high: true, 8.99).Estimate),
            (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-12);
        Assert.Equal(0.05, sums.Tail(0, high: false, 8.995).Estimate, 1e-10);
        Assert.Equal(1, sums.Tail(0, high: true, -20).Estimate);
        Assert.Equal(-8.99, sums.QuantileScore(0, 0.1), 1e-9);
        Assert.Equal(8.99 + 0.005, sums.QuantileScore(0, 0.85), 1e-9);
    }

    [Fact]
    public void What_was_never_seen_reaches_to_three_effective_rows()
    {
        // 120 equal rows.
        var sums = new PosteriorSums([.. Enumerable.Range(0, 4).Select(_ => Tally([.. Enumerable.Repeat((0.0, 2.0), 30)]))]);
        Assert.Equal(new Interval(0, 0, 3 / 120.0), sums.Tail(0, high: true, 1));
        Assert.Equal(new Interval(1, 1 - (3 / 120.0), 1), sums.Tail(0, high: false, -1));
        Assert.Equal(new Interval(0, 0, 15 / 120.0), sums.Bounded(new(0, 0, 0), 5));
        Assert.Equal(new Interval(0.5, 0.2, 1), sums.Bounded(new(0.5, 0.2, 1.3)));
        Assert.Equal(new Interval(0, 0, 1), sums.Bounded(new(-0.1, -0.2, 0.1), 1000));
        var two = new PosteriorSums([Tally([(0, 1)]), Tally([(0, 1)])]);
        Assert.Equal(1, two.Tail(0, high: true, 1).High); // fewer than three rows say nothing
    }

    [Fact]
    public void Likelihoods_are_those_of_the_lognormal_life()
    {
        var scale = new LifeModel(FleetCases.ScaleOnly()).Scale;
        const double Damage = 2e-6;
        double Z(double km) => (Math.Log(km * Damage) - scale.Mu) / scale.Sigma;
        double Log(LifeEvidence? life) => LifeLikelihood.Log(life, scale, Damage);
        foreach (double km in (double[])[2e4, 5e5, 1e7])
        {
            Assert.Equal(-0.5 * Z(km) * Z(km), Log(new LifeEvidence.FailedAt(km)), 1e-12);
            Assert.Equal(Math.Log(StandardNormal.Upper(Z(km))), Log(new LifeEvidence.Survived(km)), 1e-12);

            // A narrow interval has the density times its width, in either tail.
            double narrow = Log(new LifeEvidence.FailedBetween(km, km * 1.0001));
            Assert.Equal(Math.Log(StandardNormal.Density(Z(km * 1.00005)) * Math.Log(1.0001) / scale.Sigma), narrow, 1e-6);
            Assert.Equal(Z(km), LifeLikelihood.DrawScore(new LifeEvidence.FailedAt(km), scale, Damage, 0.3), 1e-13);
            foreach (double u in (double[])[0.001, 0.4, 0.999])
            {
                double survived = LifeLikelihood.DrawScore(new LifeEvidence.Survived(km), scale, Damage, u);
                Assert.Equal(1 - u, StandardNormal.Upper(survived) / StandardNormal.Upper(Z(km)), 1e-9);
                double between = LifeLikelihood.DrawScore(new LifeEvidence.FailedBetween(km, 3 * km), scale, Damage, u);
                (double low, double high) = (Z(km), Z(3 * km));
                Assert.Equal(u, (StandardNormal.Upper(low) - StandardNormal.Upper(between))
                    / (StandardNormal.Upper(low) - StandardNormal.Upper(high)), 1e-7);
            }
        }

        Assert.Equal((0, StandardNormal.Quantile(0.3)), (Log(null), LifeLikelihood.DrawScore(null, scale, Damage, 0.3)));
    }

    [Fact]
    public void A_counted_life_agrees_or_does_not()
    {
        static bool Agrees(LifeEvidence? life, double km) => LifeLikelihood.LogCounted(life, km) switch
        { 0 => true, double.NegativeInfinity => false, _ => throw new InvalidOperationException() };
        var at = new LifeEvidence.FailedAt(1000);
        Assert.Equal([false, true, true, false], new[] { 974.9, 975.1, 1024.9, 1025.1 }.Select(km => Agrees(at, km)));
        var between = new LifeEvidence.FailedBetween(1000, 2000);
        Assert.Equal([false, true, true, false], new[] { 999.9, 1000, 1999.9, 2000 }.Select(km => Agrees(between, km)));
        var survived = new LifeEvidence.Survived(1000);
        Assert.Equal([false, true, true], new[] { 999.9, 1000, 1e9 }.Select(km => Agrees(survived, km)));
        Assert.True(Agrees(null, 0));
    }

    [Fact]
    public void A_fitted_proposal_has_the_pilots_mean_and_its_spread_widened()
    {
        // Equal weights on a cross of mean (3, -1) and variances 0.36 and 0.04, correlated by 0.5; none may be tempered.
        const int Rows = 4000;
        double[][] normals = Workspace.Columns(2, Rows);
        for (int i = 0; i < Rows; i++)
        {
            double a = i % 2 == 0 ? 1 : -1, b = i / 2 % 2 == 0 ? 1 : -1;
            normals[0][i] = 3 + (0.6 * a);
            normals[1][i] = -1 + (0.2 * ((0.5 * a) + (Math.Sqrt(0.75) * b)));
        }

        var pilot = new Pilot(Proposal.PriorOf(TwoNormals), normals, [], new double[Rows]);
        Assert.Equal(Rows, pilot.EffectiveSize(), 1e-9);
        Proposal fitted = ProposalFit.Of(TwoNormals, pilot)!;
        Assert.False(fitted.IsPrior);
        const int Drawn = 20_000;
        var points = new SamplePoints(TwoNormals, Drawn);
        var logRatio = new double[Drawn];
        fitted.Draw(SamplingPlan.FromName("plain", Drawn), 1, "test", 0, Drawn, points, logRatio);

        // A tenth of the prior: means 0.9 m, squares 0.9 (1.2 v + m^2) + 0.1; spreads at most 3.5 over root 20,000, four of them 0.1.
        Assert.Equal(0.9 * 3, points.Normals[0].Average(), 0.04);
        Assert.Equal(-0.9, points.Normals[1].Average(), 0.02);
        int[] near = [.. Enumerable.Range(0, Drawn).Where(i => points.Normals[1][i] is > -1.8 and < -0.2 && points.Normals[0][i] > 0.8)];
        double m0 = near.Average(i => points.Normals[0][i]), m1 = near.Average(i => points.Normals[1][i]);
        Assert.Equal(1.2 * 0.36, near.Average(i => Math.Pow(points.Normals[0][i] - m0, 2)), 0.03);
        Assert.Equal(1.2 * 0.06, near.Average(i => (points.Normals[0][i] - m0) * (points.Normals[1][i] - m1)), 0.01);

        // Weights are prior over drawn density: their mean is 1, and none above 1 / 0.1.
        Assert.Equal(1, logRatio.Average(Math.Exp), 4 * 3 / Math.Sqrt(Drawn));
        Assert.InRange(logRatio.Max(), 0, Math.Log(10) + 1e-12);
    }

    [Fact]
    public void A_pilot_that_few_rows_agree_with_is_tempered_and_one_that_none_does_gives_nothing()
    {
        double[][] normals = [[.. Enumerable.Range(0, 1000).Select(i => StandardNormal.Quantile((i + 0.5) / 1000))], new double[1000]];
        double[] log = [.. normals[0].Select(x => -50 * (x - 2.5) * (x - 2.5))];
        var pilot = new Pilot(Proposal.PriorOf(TwoNormals), normals, [], log);
        Assert.InRange(pilot.EffectiveSize(), 1, 20);
        Assert.InRange(pilot.EffectiveSize(0.01), 100, 1000);
        Assert.Equal(1000, pilot.EffectiveSize(0), 1e-9);
        Assert.NotNull(ProposalFit.Of(TwoNormals, pilot));
        Assert.Null(ProposalFit.Of(TwoNormals,
            new Pilot(Proposal.PriorOf(TwoNormals), normals, [], [.. log.Select((_, i) => i == 3 ? 0 : double.NegativeInfinity)])));
        Assert.Equal(0, new Pilot(Proposal.PriorOf(TwoNormals), normals, [], [.. log.Select(_ => double.NegativeInfinity)])
            .EffectiveSize());
    }

    [Fact]
    public void Explanations_have_the_probabilities_of_their_conditions()
    {
        static Explanation Below(string column, double edge) =>
            new(column, null, [new Condition(column, double.NegativeInfinity, edge, [])]);
        var evidence = new Evidence { Explanations = [Below("axle.wall_mm", 6 - 0.25), Below("use.speed_factor", 1)] };
        double[] patterns = PatternPrior.Of(new LifeModel(FiveLegs.Scenario), evidence, 1, new RunOptions());

        // Phi(-1) and 1/2, independent; 2^17 low-discrepancy points, allowed the error of as many independent ones, twice.
        double wall = StandardNormal.Upper(1), error = 2 * Math.Sqrt(0.25 / PatternPrior.Draws);
        Assert.Equal([(1 - wall) / 2, wall / 2, (1 - wall) / 2, wall / 2], patterns, (a, b) => Math.Abs(a - b) < error);
        Assert.Equal(1, patterns.Sum(), 1e-12);
        Assert.Contains("never",
            Assert.Throws<StudyException>(() => PatternPrior.Of(new LifeModel(FiveLegs.Scenario), evidence with
            { Explanations = [Below("axle.wall_mm", 0)] }, 1, new RunOptions())).Message);
        Assert.Contains("always",
            Assert.Throws<StudyException>(() => PatternPrior.Of(new LifeModel(FiveLegs.Scenario), evidence with
            { Explanations = [Below("axle.wall_mm", 60)] }, 1, new RunOptions())).Message);
        using var ended = new CancellationTokenSource();
        ended.Cancel();
        Assert.Throws<OperationCanceledException>(() => PatternPrior.Of(new LifeModel(FiveLegs.Scenario), evidence, 1, new RunOptions
        { Cancellation = ended.Token }));
        Assert.Throws<OperationCanceledException>(() => PriorRun.Of(new LifeModel(FiveLegs.Scenario), new StudySettings(640, 1, "plain"),
            640, new RunOptions { Cancellation = ended.Token }));
    }

    // A measurement of error s of a normal factor of spread d, on its mean: the posterior is normal of variance 1 / (1/d^2 +
    // 1/s^2). Bits are
    // the divergence over the scenario's tenths, and the adverse tenth's share is the posterior's tail.
    [Fact]
    public void Bits_are_the_divergence_over_the_tenths()
    {
        var evidence = new Evidence { Measured = [new("axle.wall_mm", 6.1, 0.25)] };
        CausesResult result = CausesAnalysis.Run(new LifeModel(FiveLegs.Scenario), evidence, new StudySettings(15_000, 1, "plain"),
            new RunOptions());
        Cause wall = result.Causes.Single(c => c.Name == "axle.wall_mm");
        double mean = 0.2, deviation = Math.Sqrt(0.5); // in scores: 0.4 measured, half of it believed
        double Below(double p) => p is 0 or 1 ? p : StandardNormal.Cumulative((StandardNormal.Quantile(p) - mean) / deviation);
        double bits = Enumerable.Range(1, 10).Sum(t => (Below(t / 10.0) - Below((t - 1) / 10.0)) is var q ? q * Math.Log2(q / 0.1) : 0);
        Assert.Equal(bits, wall.Bits, 0.03);
        StateShift tenth = Assert.Single(wall.States);
        Assert.StartsWith("below", tenth.Name, StringComparison.Ordinal);
        double expected = Below(0.1);
        Assert.Equal(expected, tenth.Posterior.Estimate, 4 * Math.Sqrt(expected / result.EffectiveSampleSize));
        Assert.Equal((0.1, tenth.Posterior.Estimate / 0.1, tenth.Posterior.High / 0.1),
            (tenth.Prior, tenth.Times.Estimate, tenth.Times.High));
        Assert.Equal(6 - (0.25 * 1.6448536), wall.Prior!.Value.Low, 1e-6);
        Assert.Equal((6, 6 + (0.25 * 1.6448536)), (wall.Prior.Value.Median, wall.Prior.Value.High),
            (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6);
        Assert.All(result.Causes.Zip(result.Causes.Skip(1)), p => Assert.True(p.First.Bits >= p.Second.Bits));
        Assert.Equal(wall.Name, result.Causes[0].Name);
    }

    private static PosteriorTally Tally((double Score, double Weight)[] rows)
    {
        EvidenceWorker worker = TwoNormals.CreateWorker(rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            worker.Items[0][i] = rows[i].Score + 1e-9;
            worker.Pattern[i] = i % 4;
        }

        var tally = new PosteriorTally(TwoNormals);
        tally.Add(worker, [.. rows.Select(r => r.Weight)]);
        return tally;
    }

    [Theory]
    [InlineData(-9)]
    [InlineData(-0.5)]
    [InlineData(0)]
    [InlineData(9)]
    public void The_value_of_a_score_keeps_its_digits_in_both_tails(double score)
    {
        CauseItem item = CauseItem.Of(new LifeModel(FiveLegs.Scenario)).First(i => i.Distribution is Normal);
        Assert.Equal(score, (item.ValueOf(score) - item.Distribution.Mean) / item.Distribution.StandardDeviation, 1e-9);
    }
}
