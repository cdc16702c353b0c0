using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>The weighting against posteriors that are known in closed form (conjugate normal linear model, any textbook).</summary>
public sealed class PosteriorRunTests
{
    [Theory]
    [InlineData(1.0, 1.0, false)]  // the evidence is ordinary and vague: the prior serves
    [InlineData(5.0, 0.5, true)]   // five standard deviations out and sharp
    [InlineData(8.0, 0.3, true)]   // the prior has not one row near: tempering must lead there
    public void The_linear_Gaussian_posterior_is_met(double y, double s, bool isMoved)
    {
        var model = new LinearGaussian([1.0, 0.6, -0.4, 0], s, y);
        (PosteriorSums sums, Pilot pilot) = Weigh(model, 60_000);
        Assert.Equal(isMoved, !pilot.Proposal.IsPrior);
        Assert.True(sums.EffectiveSize > 2000, $"{sums.EffectiveSize}");
        for (int i = 0; i < 4; i++)
        {
            (double mean, double deviation) = (model.MeanOf(i), model.DeviationOf(i));

            // Standard error of a median 1.25 sd / sqrt(n), of a 5 % point 2.11 sd / sqrt(n); four of the latter, plus the bins' 0.005.
            double error = (4 * 2.11 * deviation / Math.Sqrt(sums.EffectiveSize)) + 0.005;
            Assert.Equal(mean, sums.QuantileScore(i, 0.5), error);
            Assert.Equal(mean - (1.6449 * deviation), sums.QuantileScore(i, 0.05), error);
            Assert.Equal(mean + (1.6449 * deviation), sums.QuantileScore(i, 0.95), error);
            double tail = StandardNormal.Upper((PosteriorSums.TenthScore - mean) / deviation);
            Assert.Equal(tail, sums.Tail(i, high: true, PosteriorSums.TenthScore).Estimate,
                4 * Math.Sqrt(tail * (1 - tail) / sums.EffectiveSize) + 0.002);
        }
    }

    [Fact]
    public void Intervals_of_a_tail_cover_the_truth_in_about_95_of_100_seeds()
    {
        int covered = 0;
        for (ulong seed = 1; seed <= 100; seed++)
        {
            var model = new LinearGaussian([1.0, 0.5], 0.5, 3);
            (PosteriorSums sums, _) = Weigh(model, 4000, seed);
            double tail = StandardNormal.Upper((PosteriorSums.TenthScore - model.MeanOf(0)) / model.DeviationOf(0));
            Interval interval = sums.Tail(0, high: true, PosteriorSums.TenthScore);
            covered += interval.Low <= tail && tail <= interval.High ? 1 : 0;
        }

        // Binomial of 100 and 0.95: mean 95, sd 2.2; four of them.
        Assert.InRange(covered, 86, 100);
    }

    [Fact]
    public void No_digit_depends_on_the_threads()
    {
        var model = new LinearGaussian([1.0, 0.5], 0.5, 4);
        (PosteriorSums one, _) = Weigh(model, 20_000, threads: 1);
        (PosteriorSums three, _) = Weigh(model, 20_000, threads: 3);
        Assert.Equal(one.EffectiveSize, three.EffectiveSize);
        Assert.Equal(one.QuantileScore(0, 0.5), three.QuantileScore(0, 0.5));
        Assert.Equal(one.Tail(1, high: false, 1), three.Tail(1, high: false, 1));
    }

    internal static (PosteriorSums Sums, Pilot Pilot) Weigh(EvidenceModel model, long evaluations, ulong seed = 1, int threads = 2)
    {
        var settings = new StudySettings(evaluations, seed, "plain");
        var options = new RunOptions { Threads = threads };
        (Pilot pilot, _) = PilotSearch.Run(model, settings, options);
        return (new PosteriorSums(PosteriorRun.Run(model, pilot, settings, evaluations, options)), pilot);
    }
}
