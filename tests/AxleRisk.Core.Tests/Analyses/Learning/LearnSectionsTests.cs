using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>
/// Learning of an axle of two sections alike, each with a scatter of its own: given theta it survives with the square of S, so that a
/// failure at t has the likelihood 2 f S, a survivor S^2, and one between two distances S(a)^2 - S(b)^2. Against a grid over theta.
/// </summary>
public sealed class LearnSectionsTests
{
    [Fact]
    public void The_posterior_of_two_sections_alike_is_that_of_a_grid()
    {
        LifeModel one = LearnCase.Model(LearnCase.Field);
        Scenario two = TwoSections.With(one.Scenario, (Quantities.SectionLifeScatter.Key,
            new Value.Uncertain(new Lognormal(1, LearnCase.Sigma), Knowledge.Varies)));
        PosteriorSample sample = LearnAnalysis.Run(
            new LifeModel(two), new LearnQuestion([100_000]) { Keeps = true }, new StudySettings(1 << 17, 1, "sobol"),
            new RunOptions { Threads = 2 }).Posterior!;
        double[] theta = [.. sample.Z[0].Select(z => -LearnCase.ThetaSd * z)];
        double mean = sample.Mean(row => theta[row]), sd = Math.Sqrt(sample.Mean(row => Math.Pow(theta[row] - mean, 2)));

        (double expected, double spread) = Posterior(sections: 2);
        Assert.Equal(expected, mean, 0.01);
        Assert.Equal(spread, sd, 0.05 * spread);

        // Lives of two sections are shorter: the same data speak for a greater theta.
        Assert.True(expected - Posterior(sections: 1).Mean > 0.1);
    }

    private static (double Mean, double Sd) Posterior(int sections)
    {
        double weight = 0, sum = 0, squares = 0, most = double.NegativeInfinity;
        (double Theta, double Log)[] grid =
            [.. Enumerable.Range(0, 4001).Select(i => (-2 + (i * 0.001))).Select(t => (t, Log(t, sections)))];
        most = grid.Max(g => g.Log);
        foreach ((double t, double log) in grid)
        {
            double w = Math.Exp(log - most);
            (weight, sum, squares) = (weight + w, sum + (w * t), squares + (w * t * t));
        }

        double mean = sum / weight;
        return (mean, Math.Sqrt((squares / weight) - (mean * mean)));
    }

    private static double Log(double theta, int sections)
    {
        double Score(double km) => km <= 0 ? double.NegativeInfinity
            : double.IsPositiveInfinity(km) ? double.PositiveInfinity : (Math.Log(km / LearnCase.MedianKm) - theta) / LearnCase.Sigma;
        double Survives(double km) => Math.Pow(StandardNormal.Upper(Score(km)), sections);
        double log = -0.5 * Math.Pow(theta / LearnCase.ThetaSd, 2);
        foreach (FieldRecord record in LearnCase.Field.Records)
        {
            double one = record.IsExact
                ? StandardNormal.Density(Score(record.FromKm)) * Math.Pow(StandardNormal.Upper(Score(record.FromKm)), sections - 1)
                : Survives(record.FromKm) - Survives(record.ToKm);
            log += record.Vehicles * Math.Log(one);
        }

        return log;
    }
}
