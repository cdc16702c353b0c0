using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fits;

/// <summary>Likelihood-ratio bounds where they have a closed form.</summary>
public class LikelihoodBoundsTests
{
    private const double HalfChiSquared = 1.920729;

    // Of known lognormal lives ln L falls by n z^2 / 2 where the median has the score z, the spread adapting: z = 1.96 / sqrt(n).
    [Fact]
    public void At_the_median_of_known_lives_the_bounds_are_those_of_a_mean()
    {
        LikelihoodBounds bounds = LikelihoodBounds.Of("lognormal", new FitData(PublishedLives.Bearings))!;
        Interval at = bounds.FailedBy(((Lognormal)bounds.Fit.Distribution).MedianValue);
        double half = 1.959964 / Math.Sqrt(PublishedLives.Bearings.Length);
        Assert.Equal(0.5, at.Estimate, 1e-9);
        Assert.Equal(StandardNormal.Cumulative(-half), at.Low, 1e-5);
        Assert.Equal(StandardNormal.Upper(-half), at.High, 1e-5);
    }

    // Two looks and two parameters: at each look the data are binomial, whatever the family.
    [Theory]
    [InlineData("weibull")]
    [InlineData("lognormal")]
    public void At_one_of_two_looks_the_bounds_are_the_binomial_ones(string family)
    {
        const double N = 60;
        var data = new FitData([new(double.NegativeInfinity, 100, 9), new(100, 170, 15), new(170, double.PositiveInfinity, 36)]);
        LikelihoodBounds bounds = LikelihoodBounds.Of(family, data)!;
        foreach ((double km, double failed) in new[] { (100.0, 9.0), (170, 24) })
        {
            double Fallen(double p) => (failed * Math.Log(failed / N / p)) + ((N - failed) * Math.Log((1 - (failed / N)) / (1 - p)));
            Interval at = bounds.FailedBy(km);
            Assert.Equal(failed / N, at.Estimate, 1e-5);
            Assert.True(at.Low < at.Estimate && at.Estimate < at.High);
            Assert.Equal(HalfChiSquared, Fallen(at.Low), 1e-3);
            Assert.Equal(HalfChiSquared, Fallen(at.High), 1e-3);
        }
    }

    // Many lives are put into classes: the bounds are those of the same lives, two and two alike, that need none.
    [Theory]
    [InlineData("weibull")]
    [InlineData("lognormal")]
    public void Classes_of_many_lives_keep_the_bounds(string family)
    {
        var truth = new Weibull(1.8, 200_000);
        static double[] Spread(int n, Distribution of) => [.. Enumerable.Range(0, n).Select(i => of.Quantile((i + 0.5) / n))];
        Observation[] many = [.. Spread(700, truth).Select(x => x < 150_000 ? Observation.At(x)
            : new Observation(x, double.PositiveInfinity, 1))];
        Observation[] few = [.. Spread(350, truth).Select(x => x < 150_000 ? Observation.At(x, 2)
            : new Observation(x, double.PositiveInfinity, 2))];
        LikelihoodBounds classed = LikelihoodBounds.Of(family, new FitData(many))!, plain = LikelihoodBounds.Of(family, new FitData(few))!;
        foreach (double km in new[] { 20_000.0, 100_000, 250_000 })
        {
            Interval a = classed.FailedBy(km), b = plain.FailedBy(km);
            Assert.Equal(b.Estimate, a.Estimate, 0.01 * b.Estimate);
            Assert.Equal(b.Low, a.Low, 0.015 * b.Estimate);
            Assert.Equal(b.High, a.High, 0.015 * b.Estimate);
            Assert.True(a.High - a.Low > 0.03 * a.Estimate);
        }
    }
}
