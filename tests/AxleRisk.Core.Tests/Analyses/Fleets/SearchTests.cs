using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

/// <summary>Searches and two-level sums on functions whose answer is known in closed form.</summary>
public sealed class SearchTests
{
    private const double Target = 0.02;

    // z(p) = slope ln(x / centre): the limiting value is centre exp(z(target) / slope), whatever the search does.
    [Theory]
    [InlineData(2, TargetBasis.Average)]
    [InlineData(2, TargetBasis.NinetyPercent)]
    [InlineData(0.5, TargetBasis.Average)]
    public void The_longest_value_is_where_the_probability_is_the_target(double slope, TargetBasis basis)
    {
        var search = new TargetSearch(x => Same(StandardNormal.Cumulative(slope * Math.Log(x / 100))), Target, basis);
        double expected = 100 * Math.Exp(StandardNormal.Quantile(Target) / slope);
        SearchAnswer answer = search.LongestIn(0.1, 5000);
        Assert.Equal(SearchOutcome.Found, answer.Outcome);
        Assert.Equal(1, answer.Value.Estimate / expected, 2e-4);
        Assert.Equal((0.1, 5000), (answer.Low, answer.High), Near);
    }

    [Fact]
    public void The_least_value_is_where_more_of_it_just_helps_enough()
    {
        var search = new TargetSearch(x => Same(StandardNormal.Cumulative(-3 * Math.Log(x / 4))), Target, TargetBasis.Average);
        SearchAnswer answer = search.LeastIn(2, 20);
        Assert.Equal(1, answer.Value.Estimate / (4 * Math.Exp(-StandardNormal.Quantile(Target) / 3)), 2e-4);
        Assert.Equal((2, 20), (answer.Low, answer.High), Near);
    }

    [Fact]
    public void A_value_searched_as_it_is_may_be_0()
    {
        var search = new TargetSearch(x => Same(StandardNormal.Cumulative(-4 + x)), Target, TargetBasis.Average);
        SearchAnswer answer = search.GreatestIn(0, 5);
        Assert.Equal(4 + StandardNormal.Quantile(Target), answer.Value.Estimate, 2e-4);
        Assert.Equal((0.0, 5.0), (answer.Low, answer.High));
    }

    [Fact]
    public void The_ends_of_the_range_decide_what_is_found()
    {
        var search = new TargetSearch(x => Same(x), 0.5, TargetBasis.Average);
        Assert.Equal(SearchOutcome.NoneMeets, search.GreatestIn(0.51, 0.9).Outcome);
        Assert.Equal(SearchOutcome.EveryMeets, search.GreatestIn(0.1, 0.49).Outcome);
        Assert.Equal(SearchOutcome.EveryMeets, search.GreatestIn(0.1, 0.5).Outcome); // just meets
        Assert.Equal(SearchOutcome.Found, search.GreatestIn(0.5, 0.9).Outcome);
        Assert.Equal(SearchOutcome.Found, search.GreatestIn(0, 1).Outcome); // certain ends count as the least and the most
        SearchAnswer none = search.LongestIn(0.6, 0.9);
        Assert.Equal((SearchOutcome.NoneMeets, double.NaN), (none.Outcome, none.Value.Estimate));
        Assert.Equal((0.6, 0.9), (none.Low, none.High), Near);
    }

    // Replicates whose own limiting values are known: z_r(x) = x - 4 + d_r, so each is off by -d_r; their interval is Student's.
    [Fact]
    public void The_interval_is_that_of_the_replicates_own_limits()
    {
        double[] off = [.. Enumerable.Range(0, NestedPlan.Replicates).Select(r => 0.05 * Math.Sin(r + 1))];
        DrawMeans At(double x) => new([[.. off.Select(d => StandardNormal.Cumulative(x - 4 + d))]]);
        SearchAnswer answer = new TargetSearch(At, Target, TargetBasis.Average).GreatestIn(0, 5);
        double mean = off.Average(), error = Math.Sqrt(off.Sum(d => (d - mean) * (d - mean)) / 15 / 16);

        // Student, 15 degrees of freedom, 97.5 %: 2.131 (any table). The slope of the mean differs from 1 by the spread squared.
        Assert.Equal(2.131 * error, answer.Value.High - answer.Value.Estimate, 0.01 * error);
        Assert.Equal(2.131 * error, answer.Value.Estimate - answer.Value.Low, 0.01 * error);

        SearchAnswer byLog = new TargetSearch(x => At(Math.Log(x)), Target, TargetBasis.Average).LongestIn(1, Math.Exp(5));
        Assert.Equal(2.131 * error, Math.Log(byLog.Value.High / byLog.Value.Estimate), 0.01 * error);
    }

    [Theory]
    [InlineData(0.01, 0.02, 0.05, 0.07, true)] // 0.03 lies between both
    [InlineData(0.01, 0.03, 0.05, 0.07, false)] // on an end
    [InlineData(0.01, 0.04, 0.05, 0.07, false)]
    [InlineData(0.01, 0.02, 0.03, 0.07, false)]
    [InlineData(0.01, 0.02, 0.02, 0.07, false)]
    [InlineData(0.04, 0.06, 0.05, 0.07, true)] // both beyond
    [InlineData(0.01, 0.02, double.NaN, double.NaN, true)] // there is no next
    public void A_category_is_clear_where_neither_interval_covers_the_target(double low, double high, double nextLow, double nextHigh,
        bool clear) =>
        Assert.Equal(clear, new CategoryAnswer(SearchOutcome.Found, "E", new(0, low, high), "F", new(0, nextLow, nextHigh)).IsClear(0.03));

    [Fact]
    public void A_two_level_sample_is_summed_by_draw_and_part()
    {
        // Two inner draws a part; what each vehicle's chance is follows from the lognormal distribution.
        var plan = new NestedPlan(1, 4, new StudySettings(64, 1, "plain")) { Parts = 2 };
        double[][] centres = [.. Enumerable.Range(0, 16)
            .Select(d => Enumerable.Range(0, 4).Select(v => Math.Log(1000) + (0.1 * d) + (0.3 * v)).ToArray())];
        double[][] yearly = [.. centres.Select((_, d) => new[] { 100.0, 200, 400, 800 }.Select(x => Math.Log(x * (1 + d))).ToArray())];
        var sample = new FleetSample(plan, new LognormalVehicles(centres, 0.5), yearly, 2);
        DrawMeans by = sample.FailedBy(1200);
        for (int d = 0; d < 16; d++)
        {
            Assert.Equal(centres[d].Average(c => StandardNormal.Cumulative((Math.Log(1200) - c) / 0.5)), by.AsDrawn[d], 1e-14);
        }

        // The parts are the first two and the last two: half their difference is the error of their mean.
        double error = Enumerable.Range(0, 16).Average(d => Math.Pow(Half(d, 0) - Half(d, 2), 2) / 4);
        double mean = by.AsDrawn.Average(), variance = by.AsDrawn.Average(p => (p - mean) * (p - mean));
        Assert.Equal(Math.Min(1, error * 15 / 16 / variance), by.ErrorShare, 1e-10);

        // Eighteen months, or 600 km, whichever comes first.
        DrawMeans within = sample.FailedWithin(18, 600);
        for (int d = 0; d < 16; d++)
        {
            Assert.Equal(Enumerable.Range(0, 4)
                .Average(v => StandardNormal.Cumulative((Math.Log(Math.Min(1.5 * Math.Exp(yearly[d][v]), 600)) - centres[d][v]) / 0.5)),
                within.AsDrawn[d], 1e-14);
        }

        Assert.Equal(yearly.Average(y => y.Count(x => 1.5 * Math.Exp(x) > 600) / 4.0), sample.EndedByDistance(18, 600), 1e-14);
        Assert.Equal(1, sample.EndedByDistance(1e6, 600));

        double Half(int d, int first) => centres[d].Skip(first).Take(2).Average(c => StandardNormal.Cumulative((Math.Log(1200) - c) / 0.5));
    }

    [Theory]
    [InlineData(1024, true, 8, 8)] // 64 a replicate: 8 by 8
    [InlineData(4096, true, 16, 16)]
    [InlineData(8192, true, 32, 16)]
    [InlineData(10_000, true, 39, 16)]
    [InlineData(10_000, false, 1, 625)]
    public void Evaluations_are_divided_alike_between_both_levels(long evaluations, bool hasShared, int outer, int inner)
    {
        NestedPlan plan = NestedPlan.Of(new StudySettings(evaluations, 1, "sobol"), hasShared);
        Assert.Equal((outer, inner, hasShared ? 2 : 1), (plan.Outer, plan.Inner, plan.Parts));
        Assert.Equal((16 * outer, 16L * outer * inner, inner / plan.Parts), (plan.Draws, plan.Rows, plan.InnerOfPart));
        Assert.Throws<StudyException>(() => NestedPlan.Of(new StudySettings(1023, 1, "sobol"), hasShared));
    }

    [Fact]
    public void Every_evaluation_of_a_run_is_told()
    {
        Scenario scenario = FleetCases.ScaleOnly(Knowledge.Unknown);
        Fleet fleet = FleetCases.Fleet(1000, FleetCases.Sure(20_000), 24, 100_000);
        Assert.Equal(4096, FleetCases.Run(scenario, fleet, 4096).Run.Evaluations);
        Fleet target = fleet with { TargetLife = new LifeTarget(0.05, 50_000) };
        long last = 0;
        FleetResult design = FleetAnalysis.Run(
            new LifeModel(scenario with { Fleet = target }), new StudySettings(4096, 1, "sobol"),
            new RunOptions { Threads = 1, Progress = done => last = Math.Max(last, done) });
        Assert.Equal(4096 + (design.Sampling.Designs * 1024), design.Run.Evaluations);
        Assert.InRange(design.Sampling.Designs, 4, 60);
        Assert.Equal((8192L, 8192 + (40 * 2048)),
            (FleetAnalysis.ExpectedEvaluations(fleet, 8192), FleetAnalysis.ExpectedEvaluations(target, 8192)));
        Assert.Equal(design.Run.Evaluations, last);
    }

    [Fact]
    public void Groups_give_Students_interval()
    {
        // 1, 2, 4, 5: mean 3, sample variance 10 / 3; Student with 3 degrees of freedom 3.182446 (any table).
        double half = 3.18244630528 * Math.Sqrt(10 / 3.0 / 4);
        Interval around = GroupInterval.Around(3, [1, 2, 4, 5]);
        Assert.Equal((3 - half, 3 + half), (around.Low, around.High), Near);
        Interval exp = GroupInterval.AroundExp(7, [1, 2, 4, 5]);
        Assert.Equal((7 / Math.Exp(half), 7 * Math.Exp(half)), (exp.Low, exp.High), Near);
        Assert.Equal(double.NaN, GroupInterval.Around(3, [1]).Low);
    }

    private static DrawMeans Same(double p) => new([[.. Enumerable.Repeat(p, NestedPlan.Replicates)]]);

    private static bool Near((double, double) a, (double, double) b) =>
        Math.Abs(a.Item1 - b.Item1) < 1e-8 * Math.Max(1, Math.Abs(a.Item1))
            && Math.Abs(a.Item2 - b.Item2) < 1e-8 * Math.Max(1, Math.Abs(a.Item2));
}
