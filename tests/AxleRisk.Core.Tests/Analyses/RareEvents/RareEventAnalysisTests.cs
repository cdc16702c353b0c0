using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

public sealed class RareEventAnalysisTests(ITestOutputHelper output)
{
    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    private static readonly Detail Mixed = new("DNV-RP-C203", ["D", "E", "F"], [0.2, 0.5, 0.3]);

    [Fact]
    public void The_benchmark_at_5000_km_fails_as_often_as_an_independent_program_says()
    {
        RareEventResult result = Run(Model, 5_000);

        // Source: an independent numpy implementation of the same equations, 7.3e-6 by counting, standard error 17 %.
        Assert.Equal(7.3e-6, result.Probability.Estimate, 0.17 * 7.3e-6);
        AssertGood(result);
    }

    [Fact]
    public void The_benchmark_at_1000_km_gives_the_same_by_two_methods()
    {
        RareEventResult result = Run(Model, 1_000, crossCheck: true);
        output.WriteLine($"check {result.CrossCheck}, {result.CrossCheckDistance:F2} standard errors apart");

        // No outside value; the order of magnitude is 1e-9.
        Assert.InRange(result.Probability.Estimate, 0.3e-9, 3e-9);
        Assert.True(result.CrossCheckDistance < 3);
        AssertGood(result);
    }

    [Fact]
    public void The_design_point_fails_at_just_the_distance()
    {
        // Life recomputed from the reported values: the design point lies on the limit surface.
        DesignPointReport point = Run(Model, 5_000).States[0].DesignPoints[0];
        double[][] values = Model.CreateColumns(1);
        foreach (DesignCoordinate coordinate in point.Coordinates)
        {
            values[Model.Factors.ColumnNames.IndexOf(coordinate.Name)][0] = coordinate.Value;
        }

        Workspace workspace = Model.CreateWorkspace(1);
        Model.Evaluate(values, 1, workspace);
        Assert.Equal(5_000, workspace.LifeKm[0], 5_000 * 2e-5); // the search's tolerance and the kernel's digits
        Assert.Equal(1, point.Coordinates.Sum(c => c.Cosine * c.Cosine), 1e-9);
        Assert.Equal(13, point.Coordinates.Length);

        // A larger stress factor and a smaller Miner sum bring failure nearer.
        Assert.True(point.Coordinates.Single(c => c.Name == "fatigue.stress_factor").Cosine > 0);
        Assert.True(point.Coordinates.Single(c => c.Name == "fatigue.miner_sum").Cosine < 0);
    }

    [Fact]
    public void Without_a_normal_part_the_answer_is_the_same()
    {
        // The same Miner sum with its far tail cut off is no longer lognormal, and everything is sampled.
        var cut = new Truncated(new Lognormal(1, 0.29), 1e-3, 1e3);
        var model = new LifeModel(FiveLegs.With(Quantities.MinerSum, new Value.Uncertain(cut, Knowledge.Varies)));
        Assert.False(model.Scale.IsLognormal);
        RareEventResult plain = Run(model, 5_000);
        RareEventResult conditional = Run(Model, 5_000);
        Assert.True(Apart(plain, conditional) < 4);
        Assert.Equal(conditional.States[0].DesignPoints[0].Beta, plain.States[0].DesignPoints[0].Beta, 1e-4);
        AssertGood(plain);
    }

    [Fact]
    public void The_categories_are_weighed_one_by_one()
    {
        RareEventResult mixed = Run(new LifeModel(FiveLegs.Scenario with { Detail = Mixed }), 5_000);
        double sum = 0;
        for (int i = 0; i < Mixed.Categories.Length; i++)
        {
            Detail one = new("DNV-RP-C203", [Mixed.Categories[i]], [1]);
            RareEventResult alone = Run(new LifeModel(FiveLegs.Scenario with { Detail = one }), 5_000);
            sum += Mixed.Weights[i] * alone.Probability.Estimate;
            RareEventState state = mixed.States.Single(s => s.Name == $"detail.category {Mixed.Categories[i]}");
            Assert.Equal(Mixed.Weights[i], state.Probability, 1e-12);
            Assert.Equal(alone.States[0].DesignPoints[0].Beta, state.DesignPoints[0].Beta, 1e-6);
        }

        // Both within 5 %, so 7 % apart at one standard error of both.
        Assert.Equal(sum, mixed.Probability.Estimate, 4 * 0.07 * sum);
        Assert.Equal("detail.category F", mixed.States[0].Name);
        AssertGood(mixed);
    }

    [Fact]
    public void Bounded_stepped_and_dependent_factors_give_the_same_by_two_methods()
    {
        // A measured sample (kinks), bounded factors, a choice, a road mix, a rank correlation, a Miner sum that is not lognormal.
        Dictionary<Quantity, Distribution> other = new()
        {
            [Quantities.SprungMass] = new Empirical([480, 520, 590, 600, 605, 640, 700, 710]),
            [Quantities.StressFactor] = new Triangular(0.5, 1, 1.9),
            [Quantities.RoughnessFactor] = new Uniform(0.5, 1.8),
            [Quantities.SpeedFactor] = new NumberChoice([0.9, 1, 1.2], [0.4, 0.5, 0.1]),
            [Quantities.MinerSum] = new Weibull(3, 1.2),
        };
        Scenario scenario = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i => other.TryGetValue(i.Quantity, out Distribution? d)
                ? i with { Value = new Value.Uncertain(d, Knowledge.Varies) } : i)],
            MixConcentration = 15,
            Correlations = [new RankCorrelation("vehicle.damper_n_s_per_mm", "fatigue.stress_factor", 0.4)],
        };
        RareEventResult result = Run(new LifeModel(scenario), 2_000, crossCheck: true);
        Assert.Equal(3, result.States.Length);
        Assert.All(result.States, s => Assert.False(Assert.Single(s.DesignPoints).IsApproximate));
        Assert.True(result.CrossCheckDistance < 3);
        AssertGood(result);
    }

    [Fact]
    public void Scatter_alone_gives_the_closed_form()
    {
        // Nothing is left to sample: Phi(g) itself.
        var model = new LifeModel(AllCertainBut(Quantities.LifeScatter));
        double median = BaseCaseAnalysis.MedianFactorsLifeKm(model);
        double km = median * Math.Pow(10, -5 * 0.20);
        RareEventResult result = Run(model, km);
        Assert.Equal(2.866515718791933e-7, result.Probability.Estimate, 2.9e-7 * 1e-9); // Phi(-5)
        Assert.Equal(0, result.Cov, 1e-7); // the square root of the rounding of a variance
        Assert.Equal(-1, Assert.Single(Assert.Single(result.States).DesignPoints).Coordinates.Single().Cosine, 1e-9);
    }

    [Theory]
    [InlineData(0.5, false)]
    [InlineData(2, true)]
    public void Where_all_is_certain_it_fails_or_not(double ofLife, bool fails)
    {
        var model = new LifeModel(AllCertainBut(null));
        RareEventResult result = Run(model, ofLife * BaseCaseAnalysis.MedianFactorsLifeKm(model));
        Assert.Equal(fails ? 1 : 0, result.Probability.Estimate, 1e-12);
        Assert.Equal(fails, result.FailureFound);
    }

    [Fact]
    public void Threads_change_no_digit()
    {
        var model = new LifeModel(FiveLegs.Scenario with { Detail = Mixed });
        RareEventResult one = Run(model, 5_000, threads: 1);
        RareEventResult three = Run(model, 5_000, threads: 3);
        Assert.Equal(one.Probability, three.Probability);
        Assert.Equal(one.States.Select(s => s.FailureProbability), three.States.Select(s => s.FailureProbability));
        Assert.Equal(one.Run, three.Run);
    }

    [Fact]
    public void Where_nothing_fails_the_answer_says_how_far_was_looked()
    {
        // At 1e-15 km beta is above 37.
        RareEventResult result = Run(LogLinear.Model, 1e-15);
        Assert.False(result.FailureFound);
        Assert.Equal(0, result.Probability.Estimate);
        Assert.InRange(result.Probability.High, 1e-16, 1e-9);
        Assert.Contains("no combination of the factors was found that fails", result.MethodReason, StringComparison.Ordinal);
        Assert.Null(result.Doubt);
    }

    [Fact]
    public void A_cancelled_run_says_so()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        RareEventResult result = RareEventAnalysis.Run(
            Model, 5_000, new RareEventSettings(1), new RunOptions { Cancellation = source.Token });
        Assert.True(result.Run.IsPartial);
        Assert.False(result.FailureFound);
        Assert.Contains("ended before", result.MethodReason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_too_low_for_the_target_is_told()
    {
        RareEventResult result = RareEventAnalysis.Run(
            Model, 5_000, new RareEventSettings(1) { TargetCov = 0.001, MaxEvaluations = 2_000 }, new RunOptions());
        Assert.InRange(result.Run.Evaluations, 1_500, 2_000);
        Assert.Contains("not the 0.1 % asked for", result.Doubt, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 0.05)]
    [InlineData(double.NaN, 0.05)]
    [InlineData(1_000, 0)]
    [InlineData(1_000, double.NaN)]
    public void Nonsense_is_refused(double km, double cov) =>
        Assert.ThrowsAny<ArgumentException>(() => RareEventAnalysis.Run(
            Model, km, new RareEventSettings(1) { TargetCov = cov }, new RunOptions()));

    private static Scenario AllCertainBut(Quantity? quantity) => FiveLegs.Scenario with
    {
        Inputs = [.. FiveLegs.Scenario.Inputs.Select(i => i.Quantity == quantity ? i : i with
            { Value = new Value.Certain(i.Value.Nominal) })],
    };

    private static RareEventResult Run(LifeModel model, double km, bool crossCheck = false, int threads = 2) => RareEventAnalysis.Run(
        model, km, new RareEventSettings(1) { MaxEvaluations = 20_000, CrossCheck = crossCheck }, new RunOptions { Threads = threads });

    private static double Apart(RareEventResult a, RareEventResult b) =>
        Math.Abs(Math.Log(a.Probability.Estimate / b.Probability.Estimate)) / Math.Sqrt((a.Cov * a.Cov) + (b.Cov * b.Cov));

    private void AssertGood(RareEventResult result)
    {
        output.WriteLine(
            $"{result.DistanceKm} km: {result.Probability}, CoV {result.Cov:F4}, {result.SearchEvaluations} + {result.SamplingEvaluations} evaluations,"
            + $" beta {result.States[0].DesignPoints[0].Beta:F4}");
        Assert.True(result.Cov <= 0.05);
        Assert.True(result.Run.Evaluations <= 20_000);
        Assert.Null(result.Doubt);
        Assert.InRange(result.Probability.Estimate, result.Probability.Low, result.Probability.High);
    }

    // An interval half as wide takes four times the evaluations: importance sampling is tried where sampling would have to go on for
    // more than that.
    [Theory]
    [InlineData(0.18, 1e-5, false)]
    [InlineData(0.21, 1e-5, true)]
    [InlineData(0.21, 2e-3, false)]
    public void Sampling_that_would_go_on_too_long_is_replaced(double cov, double sampled, bool replaced)
    {
        var model = new LifeModel(FiveLegs.Scenario with { RequiredKm = 5_000 });
        RareEventResult? instead = RareDistances.InPlaceOfMore(
            model, new Interval(sampled, 0, 1), cov, new RiskQuestion { UntilCov = 0.1 }, new StudySettings(100_000, 1, "plain"),
            new RunOptions());
        Assert.Equal(replaced, instead is not null);
    }
}
