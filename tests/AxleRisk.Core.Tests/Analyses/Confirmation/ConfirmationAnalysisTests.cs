using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Confirmation;

public class ConfirmationAnalysisTests
{
    private static readonly ConfirmationQuestion Short = new() { Points = 0, KmPerRecord = 1 };
    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    [Fact]
    public void A_linear_ride_agrees_within_5_percent_in_the_damage_of_the_use()
    {
        ConfirmationResult result = ConfirmationAnalysis.Run(Model, Short with { LiftOff = false, KmPerRecord = 3 }, new RunOptions());
        ConfirmedPoint point = Assert.Single(result.Points);
        Assert.InRange(point.Ratio.Estimate, 0.95, 1.05);
        Assert.Equal(point.Ratio.Estimate, 1 / point.Fast.Estimate, 1e-12);
        Assert.Equal(1, point.Limits.Estimate);
        Assert.Equal(5, point.Legs.Length);
        Assert.Equal(1, point.Legs.Sum(l => l.DamageShare), 1e-12);
        Assert.All(point.Legs, l => Assert.InRange(l.FastOverLinear.Estimate, l.FastOverLinear.Low, l.FastOverLinear.High));
    }

    // Independent prototype of the model: letting the tyre lift off on a class E road lowers the damage by a third at 80 km/h. Another
    // vehicle, so only the direction and the order of it.
    [Fact]
    public void Lift_off_on_a_class_E_road_at_80_km_per_h_lowers_the_damage()
    {
        Scenario fast = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i => i.Quantity == Quantities.Speed ? i with
                { Value = new Value.Certain(80) } : i)],
        };
        ConfirmedLeg track = ConfirmationAnalysis.Run(new LifeModel(fast), Short, new RunOptions()).Points[0].Legs[^1];
        Assert.InRange(track.LimitsOverLinear.Estimate, 0.5, 0.85);
        Assert.True(track.FastOverReference.Low > 1.1);
        Assert.InRange(track.OffGroundShare, 0.005, 0.2);
        LiftOffLeg hint = LiftOffCheck.Run(new LifeModel(fast))[^1];
        Assert.True(hint.IsLikely);
        Assert.Equal(track.TyreForceRatio, hint.TyreForceRatio, 0.02 * hint.TyreForceRatio);
        Assert.DoesNotContain(LiftOffCheck.Run(Model), l => l.IsLikely && l.Name == "leg1");
    }

    [Fact]
    public void Each_step_is_what_it_does_alone_after_those_before_it()
    {
        ConfirmationQuestion all = Short with { KmPerRecord = 0.2, ReboundDamping = 1.5, BumpClearanceMm = 20 };
        ConfirmationResult whole = ConfirmationAnalysis.Run(Model, all, new RunOptions());
        Assert.Equal([RideStepKind.TwoRateDamper, RideStepKind.BumpStop, RideStepKind.LiftOff], whole.Steps);
        ConfirmedPoint damper = ConfirmationAnalysis.Run(Model, all with { LiftOff = false, BumpClearanceMm = double.PositiveInfinity },
            new RunOptions()).Points[0];
        ConfirmedPoint stop = ConfirmationAnalysis.Run(Model, all with { LiftOff = false }, new RunOptions()).Points[0];
        Assert.Equal(damper.Limits, whole.Points[0].Steps[0]);
        Assert.Equal(stop.Steps[1], whole.Points[0].Steps[1]);
        Assert.Equal(whole.Points[0].Ratio.Estimate / stop.Ratio.Estimate, whole.Points[0].Steps[2].Estimate, 0.02);
        Assert.True(whole.Points[0].Steps[1].Estimate > 1.05);
    }

    [Fact]
    public void Threads_change_no_digit()
    {
        ConfirmationQuestion question = Short with { Points = 2, KmPerRecord = 0.1 };
        ConfirmationResult one = ConfirmationAnalysis.Run(Model, question, new RunOptions { Threads = 1 });
        ConfirmationResult two = ConfirmationAnalysis.Run(Model, question, new RunOptions { Threads = 2 });
        Assert.Equal(one.Points.Select(p => (p.Name, p.LifeKm, p.Ratio)), two.Points.Select(p => (p.Name, p.LifeKm, p.Ratio)));
        Assert.Equal(3, one.Points.Length);
        Assert.Equal(one.RatioMedian, two.RatioMedian);
    }

    [Fact]
    public void A_run_cancelled_inside_its_only_record_has_nothing_to_tell()
    {
        // One leg, so that nothing but the record itself can stop: 3,000 km of it are minutes of work, and would be a whole answer.
        Scenario leg = FiveLegs.Scenario with
        { Legs = [FiveLegs.Scenario.Legs[0]], Inputs = [.. FiveLegs.Scenario.Inputs.Where(i => i.Leg is null or 0)] };
        using var source = new CancellationTokenSource(TimeSpan.FromMilliseconds(100));
        Assert.ThrowsAny<OperationCanceledException>(() => ConfirmationAnalysis.Run(
            new LifeModel(leg), Short with { KmPerRecord = 3_000 }, new RunOptions { Threads = 1, Cancellation = source.Token }));
    }

    [Fact]
    public void A_cancelled_run_tells_the_points_that_are_done_as_the_whole_run_does()
    {
        ConfirmationQuestion question = Short with { Points = 2, KmPerRecord = 0.1 };
        ConfirmationResult whole = ConfirmationAnalysis.Run(Model, question, new RunOptions());
        using var source = new CancellationTokenSource();
        ConfirmationResult part = ConfirmationAnalysis.Run(
            Model, question, new RunOptions
            { Threads = 1, Cancellation = source.Token, Progress = done => { if (done == 7) { source.Cancel(); } } });
        ConfirmedPoint point = Assert.Single(part.Points);
        Assert.True(part.IsPartial && !whole.IsPartial);
        Assert.Equal((whole.Points[0].Name, whole.Points[0].Ratio, whole.Points[0].Fast), (point.Name, point.Ratio, point.Fast));
        Assert.Equal(point.Ratio.Estimate, part.RatioMedian, 1e-12);

        // The two legs of the next point that were done are told nowhere, not in the time either.
        Assert.Equal(ConfirmationAnalysis.Run(Model, question with { Points = 0 }, new RunOptions()).SimulatedSeconds,
            part.SimulatedSeconds);
    }

    [Fact]
    public void The_points_near_failure_are_near_failure()
    {
        ConfirmationQuestion question = Short with { Points = 4, KmPerRecord = 0.1 };
        ConfirmedPoint[] points = [.. ConfirmationAnalysis.Run(Model, question, new RunOptions()).Points];
        Assert.Equal(5, points.Length);
        Assert.All(points.Where(p => p.Name.StartsWith("near", StringComparison.Ordinal)),
            p => Assert.Equal(1, p.LifeKm / FiveLegs.Scenario.RequiredKm, 0.05));
        Assert.Equal(points.Length, points.Select(p => p.LifeKm).Distinct().Count());
    }

    [Fact]
    public void A_damage_ratio_divides_the_life_and_is_a_factor_like_any_other()
    {
        Scenario With(Value value) => FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs, new Input("fatigue.damage_ratio", Quantities.DamageRatio, null, value, false)],
        };
        double plain = BaseCaseAnalysis.Run(Model).LifeKm;
        Assert.Equal(plain / 1.25, BaseCaseAnalysis.Run(new LifeModel(With(new Value.Certain(1.25)))).LifeKm, 1e-9 * plain);
        Assert.Equal(plain, BaseCaseAnalysis.Run(new LifeModel(With(new Value.Certain(1)))).LifeKm);

        // Lognormal errors multiply: a ratio of median 1 with the Miner sum's spread acts as a second Miner sum.
        double sd = 0.29;
        LifeModel ratio = new(With(new Value.Uncertain(new Lognormal(1, sd), Knowledge.Unknown)));
        LifeModel miner = new(FiveLegs.With(Quantities.MinerSum,
            new Value.Uncertain(new Lognormal(1, sd * Math.Sqrt(2)), Knowledge.Varies)));
        double Probability(LifeModel m) => RiskAnalysis.Run(
            m, new StudySettings(200_000, 3, RiskAnalysis.DefaultSampling(m)), new RiskQuestion(),
                new RunOptions()).Result.AtRequired.Probability.Estimate;
        double expected = Probability(miner);
        Assert.Equal(expected, Probability(ratio), 0.03 * expected);
        Assert.Contains(ratio.Factors.Factors, f => f.Name == "fatigue.damage_ratio");
    }
}
