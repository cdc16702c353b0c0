using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>Learning against quadrature in one dimension (recomputed with scipy).</summary>
public class LearnQuadratureTests
{
    private static readonly LearnQuestion Question = new([50_000, 100_000, 150_000, 200_000]);

    private static readonly LearnResult Result = Learn(LearnCase.Field, evaluations: 1 << 20);

    [Fact]
    public void The_posterior_is_that_of_quadrature()
    {
        PosteriorSample sample = Result.Posterior!;
        double[] theta = [.. sample.Z[0].Select(z => -LearnCase.ThetaSd * z)];
        double mean = sample.Mean(row => theta[row]);
        Near(-0.139483, mean, 5e-5);
        Near(0.094865, Math.Sqrt(sample.Mean(row => (theta[row] - mean) * (theta[row] - mean))), 5e-5);
        double[] points = sample.Quantiles(theta, 0.05, 0.5, 0.95);
        Near(-0.291113, points[0], 1e-4);
        Near(-0.141980, points[1], 1e-4);
        Near(0.020663, points[2], 2e-3); // near 0, by a spread of 0.095
    }

    [Fact]
    public void The_marginal_likelihood_is_that_of_quadrature()
    {
        Near(-58.540916, Result.LogMarginalLikelihood.Estimate, 1e-6);
        Assert.InRange(-58.540916, Result.LogMarginalLikelihood.Low - 1e-5, Result.LogMarginalLikelihood.High + 1e-5);
    }

    [Theory]
    [InlineData(0, .019659, .003339, .000688, .008817, .000000, .183285)]
    [InlineData(1, .151405, .114292, .048520, .202454, .000100, .738071)]
    [InlineData(2, .334448, .373710, .224122, .527166, .002423, .938030)]
    [InlineData(3, .500000, .619250, .452616, .760354, .014713, .985287)]
    public void Failure_probabilities_before_and_after_are_those_of_quadrature(
        int distance, double before, double after, double low, double high, double lowBefore, double highBefore)
    {
        LearnedProbability p = Result.Curve[distance];
        Assert.Equal(before, p.Before.Estimate, 4);
        Assert.Equal(after, p.After.Estimate, 5);
        Near(low, p.After.Low, 3e-3);
        Near(high, p.After.High, 1e-3);
        Assert.Equal(lowBefore, p.Before.Low, 3);
        Assert.Equal(highBefore, p.Before.High, 2);
    }

    // Three known failures alone are a normal sample of known sd with a normal prior: mean -0.697500, sd 0.230542.
    [Fact]
    public void Known_failures_alone_are_the_conjugate_normal()
    {
        PosteriorSample sample = Learn(LearnCase.Field with { Records = [.. LearnCase.Field.Records.Where(r => r.IsExact)] }).Posterior!;
        double mean = sample.Mean(row => -LearnCase.ThetaSd * sample.Z[0][row]);
        Near(-0.697500, mean, 1e-4);
        Near(0.230542, Math.Sqrt(sample.Mean(row => Math.Pow((-LearnCase.ThetaSd * sample.Z[0][row]) - mean, 2))), 3e-4);
    }

    [Fact]
    public void Digits_do_not_depend_on_threads()
    {
        LearnResult one = Learn(LearnCase.Field, threads: 1), two = Learn(LearnCase.Field, threads: 2);
        Assert.Equal(one.LogMarginalLikelihood, two.LogMarginalLikelihood);
        Assert.Equal(one.Misfit.PValue, two.Misfit.PValue);
        Assert.Equal(one.Curve, two.Curve);
    }

    // The same likelihood by a grid of nodes and the cubic between, as where records have many distances.
    [Fact]
    public void Between_nodes_the_curve_is_that_of_the_exact_lives()
    {
        double[] nodes = [.. Enumerable.Range(0, LearnModel.MostNodes).Select(i =>
            10_000 * Math.Pow(50, i / (LearnModel.MostNodes - 1.0)))];
        LifeModel model = LearnCase.Model(LearnCase.Field);
        var unknowns = new Unknowns(model);
        var learn = new LearnModel(model, unknowns, 1, 1, nodes);
        LearnWorker worker = learn.CreateWorker();
        worker.Evaluate(0, [[0.3]], 0, 1, new double[1], _ =>
        {
            for (double km = 10_500; km < 490_000; km *= 1.07)
            {
                double z = (Math.Log(km / LearnCase.MedianKm) + (LearnCase.ThetaSd * 0.3)) / LearnCase.Sigma;
                (double failed, double whole, double density) = worker.Curves[0].At(km);
                Near(StandardNormal.Cumulative(z), failed, 1e-5);
                Near(StandardNormal.Upper(z), whole, 1e-5);
                Near(StandardNormal.Density(z) / (LearnCase.Sigma * km), density, 1e-4);
            }
        });
    }

    private static LearnResult Learn(FieldData field, int threads = 2, long evaluations = LearnAnalysis.LeastEvaluations) =>
        LearnAnalysis.Run(
        LearnCase.Model(field), Question, new StudySettings(evaluations, 1, "sobol"),
            new RunOptions { Threads = threads });

    private static void Near(double expected, double actual, double relative = 1e-5) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"{actual:R} is not {expected:R}");
}
