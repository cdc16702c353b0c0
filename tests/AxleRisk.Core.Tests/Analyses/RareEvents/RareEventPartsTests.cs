using System.Collections.Immutable;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

/// <summary>What is chosen, said and spent, on limit states made for it.</summary>
public sealed class RareEventPartsTests
{
    private static readonly LimitState Never = TestLimits.Of(2, _ => 1);

    [Fact]
    public void A_state_without_a_failure_leaves_the_answer_to_importance_sampling()
    {
        (StratifiedImportance sampling, RareEventSettings settings) = Sampling(TestLimits.Linear(3, 2), Never);
        var choice = RareEventChoice.Of(sampling, TestLimits.Linear(3, 2), settings, new RunOptions());
        Assert.Null(choice.Check);
        Assert.False(choice.IsSubset || choice.IsPartial);
        Assert.Equal((RareEventChoice.Importance, sampling.Estimate, sampling.Spent),
            (choice.Answer.Method, choice.Answer.Probability.Estimate, choice.Answer.Evaluations));

        // Half of the vehicles fail with Phi(-3), of the others only a bound is known: it lifts the upper end alone.
        double exact = 0.5 * StandardNormal.Upper(3);
        Assert.Equal(exact, sampling.Estimate, 4 * sampling.Cov * exact);
        Assert.InRange(sampling.Unresolved, 1e-12, 0.5);
        double factor = Math.Exp(1.959963984540054 * sampling.Cov);
        Assert.Equal(sampling.Estimate / factor, sampling.Probability.Low, 1e-15);
        Assert.Equal((sampling.Estimate * factor) + sampling.Unresolved, sampling.Probability.High, 1e-15);
        var words = new RareEventWords(choice, sampling, settings, "", 1);
        Assert.Equal(sampling.Unresolved > sampling.Estimate, words.Doubt is not null);
    }

    [Fact]
    public void Where_nothing_is_found_subset_simulation_is_asked_too()
    {
        (StratifiedImportance sampling, RareEventSettings settings) = Sampling(Never);
        Assert.Equal((0, double.NaN), (sampling.Estimate, sampling.Cov));
        Assert.False(sampling.IsDegenerate);
        var choice = RareEventChoice.Of(sampling, Never, settings, new RunOptions());
        Assert.NotNull(choice.Check);
        Assert.False(choice.IsSubset);
        // A plateau: one level of eight runs.
        Assert.Equal((0, double.NaN, 8 * 1000), (choice.Check.Probability.Estimate, choice.Check.Cov, choice.Check.Evaluations));

        // One it does find is the answer, and the other the check.
        choice = RareEventChoice.Of(Sampling(Never).Sampling, TestLimits.Linear(2.5, 2), settings, new RunOptions());
        Assert.True(choice.IsSubset);
        Assert.Equal((SubsetSimulation.Name, RareEventChoice.Importance), (choice.Answer.Method, choice.Check!.Method));
        Assert.Equal(StandardNormal.Upper(2.5), choice.Answer.Probability.Estimate, 4 * choice.Answer.Cov * StandardNormal.Upper(2.5));
        var words = new RareEventWords(choice, sampling, settings, "", 0);
        Assert.Equal(SubsetSimulation.Name, words.Method);
        Assert.Contains("subset simulation needs none", words.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void The_interval_of_subset_simulation_is_Students_of_its_replicates()
    {
        RareEventEstimate estimate = SubsetSimulation.Run(TestLimits.Linear(3, 2), 1, new RunOptions())!;
        double factor = Math.Exp(2.364624252 * estimate.Cov); // Student, 7 degrees of freedom, 97.5 % (any table: 2.365)
        Assert.Equal(estimate.Probability.Estimate * factor, estimate.Probability.High, 1e-8);
        Assert.Equal(estimate.Probability.Estimate / factor, estimate.Probability.Low, 1e-8);

        // Phi(-3) = 1.35e-3 takes levels 1, 0.1, 0.01, in a run that falls short a fourth: one whole and the others nine tenths,
        // eight times.
        Assert.InRange(estimate.Evaluations, 8 * (1000 + (2 * 900)), 8 * (1000 + (3 * 900)));
        Assert.Equal(0, (estimate.Evaluations - 8000) % 900);
        using var ended = new CancellationTokenSource();
        ended.Cancel();
        Assert.Null(SubsetSimulation.Run(TestLimits.Linear(3, 2), 1, new RunOptions { Cancellation = ended.Token }));
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.03)]
    [InlineData(0.015)]
    public void Sampling_ends_soon_after_its_target(double target)
    {
        (StratifiedImportance sampling, Stratum stratum) = TestLimits.Importance(TestLimits.Linear(4, 3), target, most: 200_000);
        Assert.True(sampling.Cov <= target);
        Assert.Equal(stratum.SearchEvaluations + stratum.SamplingEvaluations, sampling.Spent);

        // Samples grow with 1 / target^2: those needed by the spread found, five percent more, and one round of 512 at most.
        double needed = sampling.Cov * sampling.Cov * stratum.Samples / (target * target);
        Assert.InRange(stratum.Samples, needed * 0.999, Math.Max(512, 1.25 * needed) + 512);
        Assert.Equal(stratum.Samples, stratum.SamplingEvaluations);
        Assert.Equal(sampling.EffectiveSize, 1 / Math.Pow(stratum.RootOfSquares / sampling.Estimate, 2), 1e-6);
        Assert.InRange(sampling.LargestShare * stratum.Samples, 1, 60);
    }

    [Fact]
    public void The_limit_is_kept_and_used_up_to_a_block()
    {
        (StratifiedImportance sampling, _) = TestLimits.Importance(TestLimits.Linear(4, 3), 1e-4, most: 9_000);
        Assert.InRange(sampling.Spent, 9_000 - 512, 9_000);
    }

    [Fact]
    public void States_are_sampled_in_proportion_to_their_part_of_the_error()
    {
        (StratifiedImportance sampling, _, Stratum[] strata) = Of(0.01, TestLimits.Linear(3, 2), TestLimits.Linear(4, 2),
            TestLimits.Linear(7, 2));
        double exact = new[] { 3.0, 4, 7 }.Sum(StandardNormal.Upper) / 3;
        Assert.Equal(exact, sampling.Estimate, 4 * 0.01 * exact);
        Assert.True(sampling.Cov <= 0.01);

        // Neyman: samples as the spreads, of which the rarer state has about Phi(-4) / Phi(-3) = 0.023; the rarest keeps its first round.
        Assert.InRange(strata[1].Samples, 256, strata[0].Samples / 4);
        Assert.InRange(strata[2].Samples, 1, 512);
        Assert.Equal(strata.Sum(s => s.Part), sampling.Estimate, 1e-18);
        Assert.Equal(Math.Sqrt(strata.Sum(s => s.Spread * s.Spread / s.Samples)) / sampling.Estimate, sampling.Cov, 1e-12);
    }

    [Fact]
    public void Beta_is_the_quantile_and_its_ends_are_those_of_the_probability_turned_round()
    {
        RareEventResult result = Result(new Interval(StandardNormal.Upper(3), StandardNormal.Upper(3.2), StandardNormal.Upper(2.9)), 0.1,
            null);
        Assert.Equal(3, result.Beta.Estimate, 1e-12);
        Assert.Equal(2.9, result.Beta.Low, 1e-12);
        Assert.Equal(3.2, result.Beta.High, 1e-12);
        Assert.Equal(double.NaN, result.CrossCheckDistance);
        RareEventResult none = Result(new Interval(0, 0, 1e-9), double.NaN, null);
        Assert.Equal((double.PositiveInfinity, double.PositiveInfinity), (none.Beta.Estimate, none.Beta.High));
        Assert.Equal(5.9978, none.Beta.Low, 1e-4);
    }

    [Theory]
    [InlineData(0.03, 0.04, 1.1, 1.906203596)] // ln 1.1 / 0.05
    [InlineData(0.12, 0.05, 0.8, 1.716488856)] // ln 1.25 / 0.13
    [InlineData(0.03, 0.04, 1, 0)]
    public void The_cross_check_lies_off_in_errors_of_both_together(double cov, double checkCov, double times, double expected)
    {
        const double P = 1e-5;
        var check = new RareEventEstimate(SubsetSimulation.Name, new Interval(P * times, 0, 1), checkCov, 1);
        Assert.Equal(expected, Result(new Interval(P, 0, 1), cov, check).CrossCheckDistance, 1e-8);
    }

    // More than three errors of both apart contradict, less do not: exp(3 * 0.05) = 1.1618.
    [Theory]
    [InlineData(1.16, false)]
    [InlineData(1.164, true)]
    [InlineData(1 / 1.16, false)]
    [InlineData(1 / 1.164, true)]
    [InlineData(0, true)]
    public void A_check_three_errors_off_is_a_doubt(double times, bool doubt)
    {
        (StratifiedImportance sampling, RareEventSettings settings) = Sampling(TestLimits.Linear(3, 2));
        sampling.Run(new RunOptions());
        var answer = new RareEventEstimate(RareEventChoice.Importance, new Interval(1e-5, 0, 1), 0.03, 1000);
        var check = new RareEventEstimate(SubsetSimulation.Name, new Interval(1e-5 * times, 0, 1), 0.04, 1000);
        var words = new RareEventWords(
            new RareEventChoice(answer, check, false, false), sampling, settings, ", Miner sum and S-N scatter averaged exactly", 1);
        Assert.Equal(doubt, words.Doubt is not null);
        Assert.Equal("importance sampling about the design points, Miner sum and S-N scatter averaged exactly", words.Method);

        // Counting to the accuracy asked for, 5 %: (1 - p) / (p 0.05^2) = 4e7.
        Assert.Contains("about one design point", words.Reason, StringComparison.Ordinal);
        Assert.Contains("about 4e7 evaluations", words.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_tell_the_ends_of_a_search()
    {
        (StratifiedImportance sampling, RareEventSettings settings) = Sampling(Never);
        var nothing = new RareEventEstimate(RareEventChoice.Importance, new Interval(0, 0, 1e-9), double.NaN, 1);
        RareEventWords Of(bool partial) => new(new RareEventChoice(nothing, null, false, partial), sampling, settings, "", 0);
        Assert.Equal(("search for a failure", null), (Of(false).Method, Of(false).Doubt));
        Assert.Contains("no combination", Of(false).Reason, StringComparison.Ordinal);
        Assert.Contains("ended before", Of(true).Reason, StringComparison.Ordinal);
        var rough = new RareEventEstimate(RareEventChoice.Importance, new Interval(1e-4, 0, 1), 0.2, 1);
        Assert.Contains("20 %, not the 5 %", new RareEventWords(new RareEventChoice(rough, null, false, false),
            Sampling(TestLimits.Linear(3, 2)).Sampling, settings, "", 2).Doubt, StringComparison.Ordinal);
        Assert.Contains("2 design points",
            new RareEventWords(new RareEventChoice(rough, null, false, false), sampling, settings, "", 2).Reason, StringComparison.Ordinal);
        Assert.StartsWith("importance sampling about failing samples",
            new RareEventWords(new RareEventChoice(rough, null, false, false), sampling, settings, "", 0).Method, StringComparison.Ordinal);
    }

    private static (StratifiedImportance Sampling, RareEventSettings Settings) Sampling(params LimitState[] states)
    {
        (StratifiedImportance sampling, RareEventSettings settings, _) = Of(0.05, states);
        return (sampling, settings);
    }

    // States of equal probability; ready to run.
    private static (StratifiedImportance, RareEventSettings, Stratum[]) Of(double target, params LimitState[] states)
    {
        var settings = new RareEventSettings(1) { TargetCov = target };
        Stratum[] strata = [.. states.Select((s, i) => new Stratum(1.0 / states.Length, s, 1, $"test{i}"))];
        var sampling = new StratifiedImportance(strata, settings);
        if (target < 0.05)
        {
            sampling.Run(new RunOptions());
        }

        return (sampling, settings, strata);
    }

    private static RareEventResult Result(Interval probability, double cov, RareEventEstimate? check) => new()
    {
        DistanceKm = 1,
        Probability = probability,
        Cov = cov,
        FailureFound = probability.Estimate > 0,
        Method = "",
        MethodReason = "",
        Doubt = null,
        States = ImmutableArray<RareEventState>.Empty,
        EffectiveSize = 1,
        LargestShare = 1,
        SearchEvaluations = 1,
        SamplingEvaluations = 1,
        CrossCheck = check,
        Run = new RunRecord(1, 1, 1, "", LifeModel.Version, false),
    };

    // Of normal scores none lies beyond 40, so no run gets there: a bound, and no estimate.
    [Fact]
    public void Subset_simulation_that_meets_no_failure_says_how_far_it_looked()
    {
        RareEventEstimate found = SubsetSimulation.Run(TestLimits.Linear(40, 2), 1, new RunOptions())!;
        Assert.Equal(0, found.Probability.Estimate);
        Assert.Equal(0, found.Probability.Low);
        Assert.Equal(3e-15, found.Probability.High, 1e-20); // 12 levels of a tenth, and none of the last thousand: three in it
        Assert.Equal(double.NaN, found.Cov);
    }
}
