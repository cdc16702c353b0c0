using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

public sealed class ImportanceRunTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Neither_threads_nor_rounds_change_a_digit(int threads)
    {
        ImportanceRun whole = Run(TestLimits.Linear(4, 10), [4 / Math.Sqrt(10)], 2048, 2);
        ImportanceRun parts = Run(TestLimits.Linear(4, 10), [4 / Math.Sqrt(10)], 256, threads);
        parts.Extend(1024, new RunOptions { Threads = threads });
        parts.Extend(768, new RunOptions { Threads = threads });
        Assert.Equal(whole.Sums, parts.Sums); // bitwise
        Assert.Equal(whole.Largest, parts.Largest);
        Assert.Equal(whole.Heaviest, parts.Heaviest);
    }

    [Fact]
    public void A_region_without_a_centre_shows_up_as_a_large_weight()
    {
        // Fails on both sides at 4; the mixture knows one of them.
        LimitState twoSided = TestLimits.Of(2, u => 4 - Math.Abs(u[0]));
        ImportanceRun run = Run(twoSided, [4, 0], 2048, 2);
        Assert.True(run.Largest > Stratum.HeavyShare * run.Sums.Sum);
        Assert.True(run.Heaviest![0] < -4);
    }

    [Fact]
    public void The_weights_average_to_one()
    {
        // A state that always fails: the mean is that of the weights, density over density.
        ImportanceRun run = Run(TestLimits.Of(3, _ => -1), [2, 1, 0], 20_480, 2);
        Assert.Equal(1, run.Sums.Mean, 4 * run.Sums.StandardError);
    }

    [Fact]
    public void A_sphere_is_left_to_subset_simulation()
    {
        // |u| > 12.5 in 100 dimensions fails in all directions: no few centres stand for it. Chi-square tail, 1e-10.
        LimitState sphere = TestLimits.Of(100, u => 12.5 - PointVectors.Norm(u));
        var settings = new RareEventSettings(1) { MaxEvaluations = 20_000 };
        var sampling = new StratifiedImportance([new Stratum(1, sphere, 1, "test")], settings);
        var choice = RareEventChoice.Of(sampling, sphere, settings, new RunOptions());
        Assert.True(sampling.IsDegenerate);
        Assert.True(choice.IsSubset);
        Assert.InRange(2.758938726000e-4, choice.Answer.Probability.Low, choice.Answer.Probability.High);
        Assert.Equal(RareEventChoice.Importance, choice.Check!.Method);
    }

    private static ImportanceRun Run(LimitState state, double[] centre, long rows, int threads)
    {
        double[] full = centre.Length == 1 ? [.. Enumerable.Repeat(centre[0], state.Dimension)] : centre;
        var run = new ImportanceRun(state, new NormalMixture([(full, 1)], state.Dimension), 1, "test");
        run.Extend(rows, new RunOptions { Threads = threads });
        return run;
    }
}
