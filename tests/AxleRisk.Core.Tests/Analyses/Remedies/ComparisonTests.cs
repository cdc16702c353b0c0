using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Remedies;

public sealed class ComparisonTests
{
    private static readonly Scenario Base = FiveLegs.Scenario;

    private static readonly Scenario Stronger = Times(Quantities.StressFactor, 0.98);

    public static TheoryData<string> Plans => ["plain", "latin-hypercube", "sobol"];

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_change_of_nothing_is_exactly_nothing(string plan)
    {
        CaseChange change = Run([Base, Times(Quantities.Wall, 1)], 2_000, plan: plan).Cases[1].Change!;
        Assert.Equal(new Interval(0, 0, 0), change.Difference);
        Assert.Equal(new Interval(1, 1, 1), change.Ratio);
        Assert.Equal(new Interval(1, 1, 1), change.LifeRatio);
        Assert.False(change.IsRiskDistinct || change.IsLifeDistinct);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_first_scenario_has_the_digits_of_the_risk_study(string plan)
    {
        ComparedCase first = Run([Base, Stronger], 4_000, plan: plan).Cases[0];
        RiskResult risk = RiskAnalysis.Run(new LifeModel(Base), new StudySettings(4_000, 1, plan), new RiskQuestion(),
            new RunOptions()).Result;

        // The sums run in another order, and the search for a life ends at 1e-6 in ln km.
        Assert.Equal(risk.AtRequired.Probability.Estimate, first.Probability.Estimate, 1e-9 * first.Probability.Estimate);
        Assert.Equal(risk.Lives.Single(l => l.Percent == 10).LifeKm.Estimate, first.B10Km.Estimate, 1e-6 * first.B10Km.Estimate);
    }

    [Fact]
    public void A_scale_of_life_alone_changes_lives_by_itself()
    {
        // life = Miner sum / damage: a Miner sum times 1.25 makes every life, and so the B10 life, 1.25 times as long.
        // All samples agree, so the interval is as narrow as the search for the life, 1e-6, and the bins of damage allow.
        Interval ratio = Run([Base, Times(Quantities.MinerSum, 1.25)], 2_000).Cases[1].Change!.LifeRatio;
        Assert.Equal(1.25, ratio.Estimate, 1e-5);
        Assert.InRange(ratio.High - ratio.Low, 0, 1e-4);
    }

    [Fact]
    public void A_certain_damage_gives_the_closed_form_before_and_after()
    {
        // ln life is normal: both failure probabilities are values of the normal distribution.
        // Source: 486,590 km from an independent numpy implementation, five figures; a change of 1e-5 in it moves P by 2e-5 of itself.
        double sigma = Math.Sqrt((0.29 * 0.29) + Math.Pow(0.2 * Math.Log(10), 2));
        double P(double factor) => StandardNormal.Cumulative(-Math.Log(486_590 * factor / 200_000) / sigma);
        ComparisonResult result = Run([ScaleOnly(), WithMiner(ScaleOnly(), 1.25)], 1_000, km: 200_000);
        Assert.Equal(P(1), result.Cases[0].Probability.Estimate, 1e-3 * P(1));
        Assert.Equal(P(1.25) - P(1), result.Cases[1].Change!.Difference.Estimate, 1e-3 * P(1));
        Assert.Equal(P(1.25) / P(1), result.Cases[1].Change!.Ratio.Estimate, 1e-3);
    }

    [Fact]
    public void Less_stress_on_the_lower_slope_lengthens_life_by_the_power_of_the_slope()
    {
        // Stresses so small that every range lies below the knee, where the DNV curves have slope 5 (DNV-RP-C203, table 2-1).
        Scenario Small(double factor) =>
            With(Base, Quantities.StressFactor, new Value.Uncertain(new Lognormal(0.05 * factor, 0.2), Knowledge.Unknown));
        CaseChange change = Run([Small(1), Small(0.9)], 2_000, km: 1e12).Cases[1].Change!;

        // 1e-4 for ranges above the knee and the bins of damage; the interval covers what is left.
        Assert.Equal(Math.Pow(0.9, -5), change.LifeRatio.Estimate, 1e-3);
    }

    [Theory]
    [InlineData("plain", 10)]
    [InlineData("sobol", 3)]
    public void The_paired_interval_of_a_small_change_is_much_narrower_than_the_unpaired(string plan, double times)
    {
        ComparisonResult result = Run([Base, Stronger], 8_000, plan: plan);
        Interval difference = result.Cases[1].Change!.Difference;
        double unpaired = Math.Sqrt(result.Cases.Sum(c => Math.Pow(c.Probability.High - c.Probability.Low, 2)));
        Assert.True(result.Cases[1].Change!.IsRiskDistinct);
        Assert.True(difference.High - difference.Low < unpaired / times, $"{unpaired / (difference.High - difference.Low)}");
    }

    [Fact]
    public void Counted_failures_give_the_same_change_as_averaged_probabilities()
    {
        Value cut = new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies);
        ComparisonResult counted =
            Run([With(Base, Quantities.LifeScatter, cut), With(Times(Quantities.Wall, 1.1), Quantities.LifeScatter, cut)], 12_000,
            km: 200_000);
        ComparisonResult averaged = Run([Base, Times(Quantities.Wall, 1.1)], 12_000, km: 200_000);
        Assert.False(counted.IsConditional);
        Assert.True(averaged.IsConditional);
        Close(counted.Cases[1].Change!.Difference, averaged.Cases[1].Change!.Difference);
        Close(counted.Cases[1].Change!.Ratio, averaged.Cases[1].Change!.Ratio);
        Close(counted.Cases[1].Change!.LifeRatio, averaged.Cases[1].Change!.LifeRatio);
    }

    [Fact]
    public void Where_no_failure_was_counted_nothing_is_claimed()
    {
        Value cut = new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies);
        ComparisonResult result = Run([With(Base, Quantities.LifeScatter, cut), With(Stronger, Quantities.LifeScatter, cut)], 300, km: 1);
        CaseChange change = result.Cases[1].Change!;
        Assert.Equal(0, result.Cases[0].Probability.Estimate);
        Assert.True(result.Cases[0].Probability.High > 0.005); // Wilson: z^2 / (n + z^2) = 1.3 %
        Assert.True(change.Difference.Low < 0 && change.Difference.High > 0);
        Assert.False(change.IsRiskDistinct);
        Assert.True(double.IsNaN(change.Ratio.Estimate));
        Assert.True(change.IsLifeDistinct);
    }

    [Fact]
    public void Exchanging_two_scenarios_turns_the_change_round()
    {
        CaseChange there = Run([Base, Stronger], 2_000).Cases[1].Change!;
        CaseChange back = Run([Stronger, Base], 2_000).Cases[1].Change!;
        Assert.Equal(-there.Difference.Estimate, back.Difference.Estimate, 1e-15);
        Assert.Equal(1 / there.LifeRatio.Low, back.LifeRatio.High, 1e-12);
    }

    [Fact]
    public void A_factor_made_certain_leaves_the_samples_of_the_others_as_they_are()
    {
        // Held at its median the first factor takes its column with it; under Sobol' the others must not move up.
        // Paired, the change of B10 by a nearly certain factor is nearly that by a certain one.
        Scenario certain = With(Base, Quantities.SprungMass, new Value.Certain(600));
        Scenario nearly = With(Base, Quantities.SprungMass, new Value.Uncertain(new Lognormal(600, 1e-9), Knowledge.Varies));
        ComparisonResult result = Run([Base, certain, nearly], 2_000, plan: "sobol");
        Assert.Equal(result.Cases[1].Probability.Estimate, result.Cases[2].Probability.Estimate, 1e-8);
    }

    [Fact]
    public void A_factor_whose_correlated_partner_is_made_certain_keeps_its_samples()
    {
        Scenario correlated = With(Base, Quantities.SprungMass, new Value.Uncertain(new Lognormal(600, 1e-9), Knowledge.Varies)) with
        {
            Correlations = [new RankCorrelation("vehicle.sprung_kg", "use.speed_factor", -0.9)],
        };
        Scenario certain = Remedy.Apply(correlated,
            new Remedy("weighed", null, [new Change.ToValue("vehicle.sprung_kg", new Value.Certain(600))]));
        Assert.Empty(certain.Correlations);
        CaseChange change = Run([correlated, certain], 1_000).Cases[1].Change!;
        Assert.Equal(1, change.Ratio.Estimate, 1e-6);
        Assert.Equal(0, change.Ratio.High - change.Ratio.Low, 1e-6);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    public void The_number_of_threads_changes_no_digit(int threads) =>
        Assert.Equal(Run([Base, Stronger], 3_000, threads: 1).Cases.AsEnumerable(), Run([Base, Stronger], 3_000, threads: threads).Cases);

    [Fact]
    public void A_comparison_is_partial_where_it_was_ended_and_only_there()
    {
        Assert.False(Run([Base, Stronger], 4_000).Run.IsPartial);
        using var source = new CancellationTokenSource();
        ComparisonResult part = Comparison.Run([new(Base), new(Stronger)], 50_000, new StudySettings(4_000, 1, "plain"), new RunOptions
        { Threads = 1, Cancellation = source.Token, Progress = done => { if (done >= 2_048) { source.Cancel(); } } });
        Assert.True(part.Run.IsPartial);
        Assert.Equal((1_024, 4_000), (part.Run.Evaluations, part.Run.Requested));

        // What it says is of the rows that it took.
        Assert.Equal(Run([Base, Stronger], 1_024).Cases[1].Probability.Estimate, part.Cases[1].Probability.Estimate, 1e-12);
    }

    private static void Close(Interval a, Interval b)
    {
        // Four standard errors of both: the intervals are 2 x 2.04 wide (Student, 31 degrees of freedom).
        double se = Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)) / (2 * 2.04);
        Assert.Equal(a.Estimate, b.Estimate, 4 * se);
    }

    private static ComparisonResult Run(Scenario[] scenarios, long n, ulong seed = 1, double km = 50_000, string plan = "plain",
        int threads = 2) =>
        Comparison.Run([.. scenarios.Select(s => new LifeModel(s))], km, new StudySettings(n, seed, plan), new RunOptions
        { Threads = threads });

    private static Scenario Times(Quantity quantity, double factor) =>
        With(Base, quantity, Change.Times.Scale(Base.Find(quantity)!.Value, factor));

    private static Scenario WithMiner(Scenario scenario, double factor) =>
        With(scenario, Quantities.MinerSum, Change.Times.Scale(scenario.Find(Quantities.MinerSum)!.Value, factor));

    private static Scenario With(Scenario scenario, Quantity quantity, Value value) => scenario with
    {
        Inputs = [.. scenario.Inputs.Select(i => i.Quantity == quantity ? i with { Value = value } : i)],
    };

    private static Scenario ScaleOnly() => Base with
    {
        Inputs = [.. Base.Inputs.Select(i =>
            i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                { Value = new Value.Certain(i.Value.Nominal) })],
    };
}
