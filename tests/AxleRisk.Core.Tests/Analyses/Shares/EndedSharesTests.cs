using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Shares;

/// <summary>What is told of a run that was ended, and of the evaluations of one that was not.</summary>
public sealed class EndedSharesTests
{
    // z1 + 2 z2: shares 1/5 and 4/5. One replicate tells the shares and nothing of their error.
    [Fact]
    public void One_replicate_has_shares_without_an_interval_and_none_has_nothing()
    {
        var problem = new NormalProblem(2, z => z[0] + (2 * z[1]), new AdditiveMoment(0));
        using var source = new CancellationTokenSource();
        ShareRun one = ShareRun.Run(problem, 20_000, 1, new RunOptions
        { Threads = 1, Cancellation = source.Token, Progress = _ => source.Cancel() }, allSubsets: true);
        Assert.True(one.IsPartial);
        Interval second = one.Share(0, 1);
        Assert.Equal((double.NaN, double.NaN), (second.Low, second.High));
        Assert.Equal(0.8, second.Estimate, 0.2); // 64 pairs
        Assert.Equal(1, one.Share(0, 0, 1).Estimate, 1e-12);
        Assert.Equal(1, one.Share(0, 0).Estimate + second.Estimate, 1e-12);
        ShareRun none = ShareRun.Run(problem, 20_000, 1, new RunOptions { Threads = 1, Cancellation = source.Token }, allSubsets: true);
        Assert.Equal((0, double.NaN), (none.Pairs, none.Share(0, 0).Estimate));
    }

    [Fact]
    public void A_ranking_tells_every_evaluation_it_spends()
    {
        long last = 0;
        RankResult result = RankAnalysis.Run(
            new LifeModel(FiveLegs.Scenario), new StudySettings(8_000, 1, "plain"), new RunOptions
            { Threads = 1, Progress = done => last = Math.Max(last, done) });
        Assert.False(result.Run.IsPartial);

        // Random orders cost each another number of evaluations: the progress counts their mean.
        Assert.Equal(1, last / (double)result.Run.Evaluations, 0.05);
        Assert.InRange(result.Run.Evaluations, 6_000, 8_000);
    }
}
