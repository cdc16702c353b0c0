using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;
using static AxleRisk.Core.Tests.Analyses.Fleets.FleetCases;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

public sealed class FleetAnalysisTests
{
    private static readonly Fleet Whole = Fleet(500, Lognormal(30_000, 0.3), 24, 60_000) with
    {
        CostPerClaim = Lognormal(1_000, 0.4),
        TargetClaimRate = 0.02,
        TargetLife = new LifeTarget(0.05, 50_000),
    };

    private static readonly Lazy<FleetResult> WithTwoThreads = new(() => Run(FiveLegs.Scenario, Whole, 1024));

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    public void The_number_of_threads_changes_no_digit(int threads)
    {
        FleetResult two = WithTwoThreads.Value;
        FleetResult other = Run(FiveLegs.Scenario, Whole, 1024, threads);
        Assert.Equal(two.Claims, other.Claims);
        Assert.Equal(two.Cost, other.Cost);
        Assert.Equal(two.Sampling.InnerShare, other.Sampling.InnerShare);
        Assert.Equal(two.Months.AsEnumerable(), other.Months);
        Assert.Equal(two.Warranty!.Limits.AsEnumerable(), other.Warranty!.Limits);
        Assert.Equal(two.Design!.Limits.AsEnumerable(), other.Design!.Limits);
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("latin-hypercube")]
    public void Every_sampling_plan_gives_the_same_claims_within_its_error(string plan)
    {
        Fleet fleet = Whole with { TargetLife = null };
        var sobol = Run(FiveLegs.Scenario, fleet, 16_384).Claims.Expected;
        var other = Run(FiveLegs.Scenario, fleet, 8_192, plan: plan).Claims.Expected;
        double se = Math.Sqrt(Math.Pow(sobol.High - sobol.Low, 2) + Math.Pow(other.High - other.Low, 2)) / (2 * 2.13);
        Assert.Equal(sobol.Estimate, other.Estimate, 4 * se);
    }

    [Fact]
    public void Counted_failures_agree_with_averaged_ones()
    {
        Fleet fleet = Whole with { TargetLife = null };
        Value cut = new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies);
        FleetResult counted = Run(With(FiveLegs.Scenario, Quantities.LifeScatter, cut), fleet, 16_384);
        FleetResult averaged = Run(FiveLegs.Scenario, fleet, 16_384);
        Assert.True(averaged.Sampling.IsConditional && !counted.Sampling.IsConditional);
        var (a, b) = (counted.Claims.Expected, averaged.Claims.Expected);
        double se = Math.Sqrt(Math.Pow(a.High - a.Low, 2) + Math.Pow(b.High - b.Low, 2)) / (2 * 2.13);
        Assert.Equal(a.Estimate, b.Estimate, 4 * se);
    }

    [Property(MaxTest = 10)]
    public Property Claims_rise_with_months_distance_and_size() => Prop.ForAll(
        Gen.Choose(1, 60).SelectMany(m => Gen.Choose(1, 30).SelectMany(km => Gen.Choose(1, 5_000).Select(n => (m, km, n)))).ToArbitrary(),
        c =>
        {
            FleetResult Of(int months, double km, long vehicles) =>
                Run(FiveLegs.Scenario, Fleet(vehicles, Lognormal(30_000, 0.3), months, km), 1024);
            FleetResult fewest = Of(c.m, 10_000 * c.km, c.n);
            Prediction first = fewest.Claims;
            Assert.True(first.Low <= first.High && first.High <= c.n);
            Assert.True(first.Expected.Low <= first.Expected.Estimate && first.Expected.Estimate <= first.Expected.High);
            foreach (FleetResult more in (FleetResult[])[Of(c.m + 6, 10_000 * c.km, c.n), Of(c.m, 20_000 * c.km, c.n),
                Of(c.m, 10_000 * c.km, 2 * c.n)])
            {
                // The error of the inner draws is taken out of each band by itself; what may be left of it each result says.
                double left = (fewest.Sampling.Residue * (first.High - first.Low))
                    + (more.Sampling.Residue * (more.Claims.High - more.Claims.Low));
                Assert.True(more.Claims.Expected.Estimate >= first.Expected.Estimate);
                Assert.True(more.Claims.Low >= first.Low - left && more.Claims.High >= first.High - left);
            }
        });

    [Fact]
    public void What_does_not_fit_is_refused()
    {
        Assert.Contains("a fleet needs 1,024 to", Assert.Throws<StudyException>(() => Run(FiveLegs.Scenario, Whole, 1_000)).Message,
            StringComparison.Ordinal);
        Scenario mixed = FiveLegs.Scenario with { Correlations = [new RankCorrelation("axle.wall_mm", "fatigue.stress_factor", 0.3)] };
        Assert.Contains("a fleet needs both of one kind", Assert.Throws<StudyException>(() => Run(mixed, Whole)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_cancelled_run_has_no_answer()
    {
        using var ended = new CancellationTokenSource();
        ended.Cancel();
        Assert.Throws<OperationCanceledException>(() => FleetAnalysis.Run(
            new LifeModel(FiveLegs.Scenario with { Fleet = Whole }), new StudySettings(2048, 1, "sobol"), new RunOptions
            { Cancellation = ended.Token }));
    }

    [Fact]
    public void Cancelled_among_the_designs_the_claims_are_told()
    {
        using var ended = new CancellationTokenSource();
        FleetResult result = FleetAnalysis.Run(
            new LifeModel(FiveLegs.Scenario with { Fleet = Whole }), new StudySettings(2048, 1, "sobol"),
            new RunOptions { Threads = 1, Cancellation = ended.Token, Progress = done => { if (done > 2048) { ended.Cancel(); } } });
        Assert.True(result.Run.IsPartial);
        Assert.Null(result.Design);
        Assert.True(result.Claims.Expected.Estimate > 0);
    }
}
