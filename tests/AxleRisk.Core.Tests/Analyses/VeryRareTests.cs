using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>Failures far beyond what sampling reaches, against the closed form of a log-linear scenario.</summary>
public sealed class VeryRareTests
{
    private static readonly StudySettings Settings = new(8_192, 1, "sobol");

    [Theory]
    [InlineData(1e-12)]
    [InlineData(4.6e-20)]
    [InlineData(1e-30)]
    [InlineData(1e-100)]
    [InlineData(1e-290)]
    public void The_answer_reaches_as_far_as_doubles_do(double exact)
    {
        double km = LogLinear.KmOf(exact);
        DistanceRisk risk = Run(LogLinear.Requiring(km), Settings, RiskMethod.Auto).AtRequired;
        Assert.True(risk.IsResolved);
        Assert.Equal(RiskMethod.Importance, risk.Method);
        AssertHolds(risk.Probability, exact);
        Assert.InRange(risk.Probability.High / risk.Probability.Low, 1, 1.3); // 5 % at most: exp(2 x 1.96 x 0.05) = 1.22
    }

    [Fact]
    public void What_no_double_can_say_is_a_bound()
    {
        // beta 43: P is below 1e-400.
        DistanceRisk risk = Run(LogLinear.Requiring(LogLinear.MedianKm * Math.Exp(-43 * LogLinear.Sigma)), Settings,
            RiskMethod.Auto).AtRequired;
        Assert.False(risk.IsResolved);
        Assert.Equal(0, risk.Probability.Low);
        Assert.InRange(risk.Probability.High, double.Epsilon, 1e-9);
    }

    [Theory]
    [InlineData("sobol")]
    [InlineData("latin-hypercube")]
    [InlineData("plain")]
    public void The_conditional_method_never_misses_a_rare_event(string plan)
    {
        const double Exact = 1.06e-10;
        LifeModel model = LogLinear.Requiring(LogLinear.KmOf(Exact));
        foreach (ulong seed in new ulong[] { 1, 2, 3, 4 })
        {
            RiskResult result = Run(model, Settings with { Seed = seed, Sampling = plan }, RiskMethod.Conditional);
            Assert.Equal(RiskMethod.Importance, result.AtRequired.Method); // handed over
            AssertHolds(result.AtRequired.Probability, Exact);
        }
    }

    [Fact]
    public void A_part_of_a_run_has_nobody_to_hand_over_to_and_states_a_bound()
    {
        const double Exact = 1.06e-10;
        LifeModel model = LogLinear.Requiring(LogLinear.KmOf(Exact));
        var question = new RiskQuestion { Method = RiskMethod.Conditional, Part = new StudyPart(1, 2) };
        RiskResult result = RiskAnalysis.Run(model, Settings, question, new RunOptions()).Result;
        Assert.All(result.Distances, d =>
        {
            Assert.False(d.IsResolved);
            Assert.InRange(LogLinear.Probability(d.DistanceKm), d.Probability.Low, d.Probability.High);

            // Rule of three: 3 / 4096 and what was seen.
            Assert.InRange(d.Probability.High, 7.3e-4, 8e-4);
        });
    }

    [Fact]
    public void What_many_rows_carry_stays_with_the_conditional_method()
    {
        DistanceRisk risk = Run(LogLinear.Requiring(LogLinear.KmOf(1e-3)), Settings, RiskMethod.Conditional).AtRequired;
        Assert.Equal(RiskMethod.Conditional, risk.Method);
        AssertHolds(risk.Probability, 1e-3);
    }

    [Fact]
    public void A_wanted_accuracy_is_reached_by_the_method_that_needs_least()
    {
        const double Exact = 7.3e-6;
        var model = LogLinear.Requiring(LogLinear.KmOf(Exact));
        var question = new RiskQuestion { UntilCov = 0.1 };
        RiskResult result = RiskAnalysis.Run(model, Settings with { Evaluations = 20_000_000 }, question, new RunOptions()).Result;
        Assert.Equal(4_096, result.Run.Evaluations); // the first round: 16 blocks of 256
        RareEventResult rare = result.RareEvents.Single(r => r.DistanceKm == model.Scenario.RequiredKm);
        Assert.True(rare.Cov <= 0.1);
        Assert.True(rare.Run.Evaluations <= 2_000);
        AssertHolds(result.AtRequired.Probability, Exact);
    }

    [Theory]
    [InlineData(RiskMethod.Auto, 1e-6, true)]
    [InlineData(RiskMethod.Auto, 0.01, false)]
    [InlineData(RiskMethod.Importance, 0.01, true)]
    [InlineData(RiskMethod.Crude, 1e-6, false)]
    [InlineData(RiskMethod.Conditional, 1e-6, false)]
    public void A_method_that_was_asked_for_is_kept(RiskMethod method, double p, bool hands)
    {
        var question = new RiskQuestion { Method = method, UntilCov = 0.1 };
        RareEventResult? instead = RareDistances.InPlaceOfMore(
            LogLinear.Requiring(LogLinear.KmOf(p)), new Interval(p, p / 10, p * 10), 5, question, Settings with { Evaluations = 1_000_000 },
            new RunOptions());
        Assert.Equal(hands, instead is not null);
    }

    [Fact]
    public void An_accuracy_within_reach_of_sampling_is_sampled()
    {
        var question = new RiskQuestion { UntilCov = 0.1, DistancesKm = [LogLinear.KmOf(0.05)] };
        RiskResult result = RiskAnalysis.Run(LogLinear.Requiring(LogLinear.KmOf(0.01)), Settings with { Evaluations = 1_000_000 },
            question, new RunOptions()).Result;
        Assert.Equal(RiskMethod.Conditional, result.AtRequired.Method);
        Assert.Empty(result.RareEvents);
    }

    [Fact]
    public void Few_terms_are_told_from_many()
    {
        // Kish: (sum)^2 / sum of squares is n for equal terms and 1 for one that outweighs the rest.
        Assert.False(FewTerms.Carry(new PowerSums(1_000, 1_000 * 1e-9, 1_000 * 1e-18), 1e-9));
        Assert.True(FewTerms.Carry(new PowerSums(1_000, 1e-6, 1e-12), 1e-9));
        Assert.False(FewTerms.Carry(new PowerSums(1_000, 20, 10), 0.02)); // not rare
        Assert.True(FewTerms.Carry(new PowerSums(1_000, 1e-200, 0), 1e-203)); // squares that are no doubles any more
        Interval bound = FewTerms.Bound(new Interval(1e-9, 1e-10, 1e-8), 1_000);
        Assert.True(double.IsNaN(bound.Estimate));
        Assert.Equal(0.003, bound.High, 1e-6); // rule of three
    }

    private static RiskResult Run(LifeModel model, StudySettings settings, RiskMethod method) =>
        RiskAnalysis.Run(model, settings, new RiskQuestion { Method = method, DistancesKm = [2 * model.Scenario.RequiredKm] },
            new RunOptions()).Result;

    /// <summary>Within twice the 95 % interval on the scale of the logarithm: four standard errors.</summary>
    internal static void AssertHolds(Interval p, double exact)
    {
        double half = Math.Log(p.High / p.Low) / 2;
        Assert.InRange(Math.Log(exact / p.Estimate), -2 * half, 2 * half);
    }
}
