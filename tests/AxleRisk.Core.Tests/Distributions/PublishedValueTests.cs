using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>Moments, quantiles and conversions against closed forms computed elsewhere; all printed digits.</summary>
public class PublishedValueTests
{
    [Fact]
    public void Pert_10_12_20_has_its_moments_and_quantiles()
    {
        var pert = new Pert(10, 12, 20);
        Assert.Equal(1.8, pert.Alpha, 1e-14);
        Assert.Equal(4.2, pert.Beta, 1e-14);
        Assert.Equal(13, pert.Mean, 1e-13);
        Assert.Equal(3, Math.Pow(pert.StandardDeviation, 2), 1e-13);
        Assert.Equal(10.5897738761, pert.Quantile(0.05), 1e-10);
        Assert.Equal(12.7667225939, pert.Quantile(0.5), 1e-10);
        Assert.Equal(16.2127672402, pert.Quantile(0.95), 1e-10);
    }

    [Fact]
    public void Triangular_10_12_20_has_its_moments_and_quantiles()
    {
        var triangular = new Triangular(10, 12, 20);
        Assert.Equal(14, triangular.Mean, 1e-13);
        Assert.Equal(4.6666666667, Math.Pow(triangular.StandardDeviation, 2), 1e-10);
        Assert.Equal(11, triangular.Quantile(0.05), 1e-13);
        Assert.Equal(13.6754446797, triangular.Quantile(0.5), 1e-10);
        Assert.Equal(18, triangular.Quantile(0.95), 1e-13);
    }

    [Fact]
    public void Weibull_of_shape_2_has_its_moments()
    {
        var weibull = new Weibull(2, 1);
        Assert.Equal(0.886226925453, weibull.Mean, 1e-12);
        Assert.Equal(0.463251375176, weibull.StandardDeviation, 1e-12);
    }

    [Fact]
    public void Gumbel_has_its_moments_and_comes_from_them()
    {
        var gumbel = new Gumbel(3, 2);
        Assert.Equal(3 + (2 * 0.5772156649), gumbel.Mean, 1e-9);
        Assert.Equal(4 * 1.6449340668, Math.Pow(gumbel.StandardDeviation, 2), 1e-9);
        Gumbel same = Gumbel.FromMeanAndSd(gumbel.Mean, gumbel.StandardDeviation);
        Assert.Equal(3, same.Location, 1e-14);
        Assert.Equal(2, same.Scale, 1e-14);
    }

    /// <summary>JCSS Probabilistic Model Code, part 3.12 (CoV of the S-N constant 0.58); the conversions recomputed to 10 digits.</summary>
    [Theory]
    [InlineData(0.58, 0.23386644)]
    [InlineData(0.4860470579, 0.2)]
    public void A_coefficient_of_variation_is_a_scatter_of_log10(double cov, double standardDeviationOfLog10)
    {
        Assert.Equal(standardDeviationOfLog10, Lognormal.FromMedianAndCov(1, cov).StandardDeviationOfLn / Math.Log(10), 5e-9);
        var lognormal = new Lognormal(1, standardDeviationOfLog10 * Math.Log(10));
        Assert.Equal(cov, lognormal.StandardDeviation / lognormal.Mean, 2e-8);
    }

    [Fact]
    public void A_lognormal_from_mean_and_cov_has_them()
    {
        Lognormal lognormal = Lognormal.FromMeanAndCov(1, 0.3);
        Assert.Equal(1, lognormal.Mean, 1e-14);
        Assert.Equal(0.3, lognormal.StandardDeviation, 1e-14);
        Assert.Equal(1 / Math.Sqrt(1.09), lognormal.Median, 1e-14);
    }
}
