using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

public sealed class ScaledTests
{
    [Fact]
    public void A_scaled_normal_or_lognormal_stays_one()
    {
        Normal normal = Assert.IsType<Normal>(Scaled.Of(new Normal(6, 0.25), 2));
        Assert.Equal((12, 0.5), (normal.Mean, normal.StandardDeviation));
        Lognormal lognormal = Assert.IsType<Lognormal>(Scaled.Of(new Lognormal(3, 0.2), 2));
        Assert.Equal((6, 0.2), (lognormal.MedianValue, lognormal.StandardDeviationOfLn));
    }

    [Fact]
    public void A_cut_distribution_is_cut_at_the_scaled_limits()
    {
        Distribution scaled = Scaled.Of(new Truncated(new Normal(6, 0.25), 5.5, null), 2);
        Assert.Equal((11, double.PositiveInfinity), (scaled.Minimum, scaled.Maximum));
    }

    [Fact]
    public void Times_one_is_the_distribution_itself()
    {
        var pert = new Pert(1, 2, 3);
        Assert.Same(pert, Scaled.Of(pert, 1));
    }

    [Fact]
    public void Scaling_twice_multiplies() =>
        Assert.Equal("pert(low 1, mode 2, high 3, shape 4, times 6)", Scaled.Of(Scaled.Of(new Pert(1, 2, 3), 2), 3).ToString());

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_number_that_scales_nothing_is_refused(double factor) =>
        Assert.Throws<DistributionException>(() => Scaled.Of(new Pert(1, 2, 3), factor));
}
