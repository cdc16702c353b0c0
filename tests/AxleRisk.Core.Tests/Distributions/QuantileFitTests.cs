using AxleRisk.Core.Distributions;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

public class QuantileFitTests
{
    public static TheoryData<string> Families => [.. QuantileFit.Families];

    [Theory]
    [MemberData(nameof(Families))]
    public void The_fitted_member_has_both_quantiles(string family)
    {
        foreach ((double p1, double x1, double p2, double x2) in new[]
        {
            (0.05, 120.0, 0.95, 180.0), (0.1, 1e-3, 0.5, 4.0), (0.001, 99.0, 0.999, 101.0), (0.5, 3e5, 0.9, 1.2e6),
        })
        {
            Distribution d = QuantileFit.Of(family, new(p1, x1), new(p2, x2));
            Assert.Equal(family, d.Family);
            Assert.Equal(1, d.Quantile(p1) / x1, 1e-9);
            Assert.Equal(1, d.Quantile(p2) / x2, 1e-9);
        }
    }

    [Property(MaxTest = 200)]
    public bool Any_gamma_is_found_again_from_two_of_its_quantiles(ushort shapeIndex, byte spread)
    {
        double shape = 0.05 * Math.Pow(10, 5.0 * shapeIndex / ushort.MaxValue);
        double p = 0.01 + (0.4 * spread / 255);
        var gamma = new Gamma(shape, 3);
        Gamma found = QuantileFit.ToGamma(new(p, gamma.Quantile(p)), new(1 - p, gamma.Quantile(1 - p)));

        // The ratio of the quantiles fixes the shape through its logarithm, about 1/sqrt(shape) wide.
        return Math.Abs((found.Shape / shape) - 1) < 1e-9 * (1 + Math.Sqrt(shape));
    }

    [Fact]
    public void Closed_forms_give_the_known_member()
    {
        Assert.Equal(0, QuantileFit.ToUniform(new(0.25, 1), new(0.5, 2)).Minimum, 1e-15);
        Assert.Equal(4, QuantileFit.ToUniform(new(0.25, 1), new(0.5, 2)).Maximum, 1e-15);
        Assert.Equal(5, QuantileFit.ToNormal(new(0.1, 4), new(0.9, 6)).Mean, 1e-14);

        // Bearing life of Weibull slope 1.5: L50 / L10 = 3.5110071647 (closed form, 10 digits).
        Assert.Equal(1.5, QuantileFit.ToWeibull(new(0.1, 1), new(0.5, 3.5110071647)).Shape, 1e-9);
    }

    [Theory]
    [InlineData("normal", 0.0, 1.0, 0.9, 2.0, "p1")]
    [InlineData("normal", double.NaN, 1.0, 0.9, 2.0, "p1")]
    [InlineData("normal", 0.5, 1.0, 0.5, 2.0, "p2")]
    [InlineData("normal", 0.5, 1.0, 1.0, 2.0, "p2")]
    [InlineData("normal", 0.5, 1.0, double.NaN, 2.0, "p2")]
    [InlineData("normal", 0.1, double.NaN, 0.9, 2.0, "x1")]
    [InlineData("normal", 0.1, 2.0, 0.9, 2.0, "x2")]
    [InlineData("gumbel", 0.1, 2.0, 0.9, double.PositiveInfinity, "x2")]
    [InlineData("lognormal", 0.1, 0.0, 0.9, 2.0, "x1")]
    [InlineData("weibull", 0.1, -1.0, 0.9, 2.0, "x1")]
    [InlineData("log-uniform", 0.1, -1.0, 0.9, 2.0, "x1")]
    [InlineData("gamma", 0.1, 0.0, 0.9, 2.0, "x1")]
    [InlineData("gamma", 0.1, 1.0, 0.9, 1.0001, "x2")]
    [InlineData("beta", 0.1, 1.0, 0.9, 2.0, "family")]
    public void Impossible_statements_are_rejected_by_name(string family, double p1, double x1, double p2, double x2, string parameter) =>
        Assert.Equal(parameter, Assert.Throws<DistributionException>(() => QuantileFit.Of(family, new(p1, x1), new(p2, x2))).Parameter);
}
