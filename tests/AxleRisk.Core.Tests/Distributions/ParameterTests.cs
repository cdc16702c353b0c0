using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

public class ParameterTests
{
    private static readonly Dictionary<string, (Func<double[], Distribution> Make, double[] Good, string[] Names)> Makers = new()
    {
        ["normal"] = (a => new Normal(a[0], a[1]), [6, 0.25], ["mean", "sd"]),
        ["lognormal"] = (a => new Lognormal(a[0], a[1]), [1, 0.2], ["median", "sd_ln"]),
        ["lognormal from median and cov"] = (a => Lognormal.FromMedianAndCov(a[0], a[1]), [1, 0.2], ["median", "cov"]),
        ["lognormal from mean and cov"] = (a => Lognormal.FromMeanAndCov(a[0], a[1]), [1, 0.2], ["mean", "cov"]),
        ["uniform"] = (a => new Uniform(a[0], a[1]), [1, 2], ["low", "high"]),
        ["log-uniform"] = (a => new LogUniform(a[0], a[1]), [1, 2], ["low", "high"]),
        ["triangular"] = (a => new Triangular(a[0], a[1], a[2]), [1, 2, 3], ["low", "mode", "high"]),
        ["pert"] = (a => new Pert(a[0], a[1], a[2], a[3]), [1, 2, 3, 4], ["low", "mode", "high", "shape"]),
        ["beta"] = (a => new ScaledBeta(a[0], a[1], a[2], a[3]), [2, 3, 0, 1], ["alpha", "beta", "low", "high"]),
        ["weibull"] = (a => new Weibull(a[0], a[1], a[2]), [2, 1, 0], ["shape", "scale", "location"]),
        ["gumbel"] = (a => new Gumbel(a[0], a[1]), [0, 1], ["location", "scale"]),
        ["gumbel from mean and sd"] = (a => Gumbel.FromMeanAndSd(a[0], a[1]), [0, 1], ["mean", "sd"]),
        ["gamma"] = (a => new Gamma(a[0], a[1]), [2, 1], ["shape", "scale"]),
        ["gamma from mean and sd"] = (a => Gamma.FromMeanAndSd(a[0], a[1]), [2, 1], ["mean", "sd"]),
        ["exponential"] = (a => new Exponential(a[0], a[1]), [2, 1], ["mean", "location"]),
        ["truncated"] = (a => new Truncated(new Normal(0, 1), a[0], a[1]), [-1, 1], ["min", "max"]),
        ["choice"] = (a => new NumberChoice([a[0], 7], [1, a[1]]), [1, 2], ["values", "weights"]),
        ["sample"] = (a => new Empirical([1, 2, a[0]]), [3], ["values"]),
    };

    public static TheoryData<string> Names => [.. Makers.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_parameter_that_is_no_number_is_rejected_by_name(string name)
    {
        (Func<double[], Distribution> make, double[] good, string[] parameters) = Makers[name];
        Assert.NotNull(make(good));
        for (int i = 0; i < good.Length; i++)
        {
            foreach (double bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
            {
                double[] arguments = [.. good];
                arguments[i] = bad;
                var error = Assert.Throws<DistributionException>(() => make(arguments));

                // An infinite lower end also puts the next parameter out of order; the lower end is still the one to name.
                Assert.Equal(parameters[i], error.Parameter);
                Assert.Contains(parameters[i] is "values" ? "finite" : "not", error.Message);
            }
        }
    }

    [Theory]
    [InlineData("normal", "sd", 6.0, 0.0)]
    [InlineData("lognormal", "median", -1.0, 0.2)]
    [InlineData("lognormal", "sd_ln", 1.0, 0.0)]
    [InlineData("uniform", "high", 2.0, 2.0)]
    [InlineData("log-uniform", "low", 0.0, 2.0)]
    [InlineData("log-uniform", "high", 3.0, 2.0)]
    [InlineData("triangular", "mode", 1.0, 4.0, 3.0)]
    [InlineData("triangular", "high", 1.0, 1.0, 1.0)]
    [InlineData("pert", "mode", 1.0, 0.0, 3.0, 4.0)]
    [InlineData("pert", "shape", 1.0, 2.0, 3.0, 0.0)]
    [InlineData("beta", "alpha", 0.0, 1.0, 0.0, 1.0)]
    [InlineData("beta", "beta", 1.0, -1.0, 0.0, 1.0)]
    [InlineData("beta", "high", 1.0, 1.0, 0.0, -1.0)]
    [InlineData("weibull", "shape", 0.0, 1.0, 0.0)]
    [InlineData("weibull", "scale", 1.0, -2.0, 0.0)]
    [InlineData("gumbel", "scale", 0.0, 0.0)]
    [InlineData("gamma", "shape", 0.0, 1.0)]
    [InlineData("gamma", "scale", 1.0, 0.0)]
    [InlineData("exponential", "mean", 1.0, 1.0)]
    [InlineData("truncated", "max", 1.0, -1.0)]
    [InlineData("truncated", "min", 8.0, 9.0)] // keeps 6e-16
    [InlineData("choice", "weights", 1.0, 0.0)]
    [InlineData("choice", "values", 7.0, 1.0)] // 7 is stated twice
    public void A_parameter_out_of_its_range_is_rejected_by_name(string name, string parameter, params double[] arguments) =>
        Assert.Equal(parameter, Assert.Throws<DistributionException>(() => Makers[name].Make(arguments)).Parameter);

    [Fact]
    public void Parameters_are_listed_under_their_names_in_order()
    {
        Assert.Equal("pert(low 10, mode 12, high 20, shape 4)", new Pert(10, 12, 20).ToString());
        Assert.Equal("normal(mean 6, sd 0.25, min 5)", new Truncated(new Normal(6, 0.25), 5, null).ToString());
        Assert.Equal("choice(value_1 1, weight_1 0.25, value_2 2, weight_2 0.75)", new NumberChoice([2, 1], [3, 1]).ToString());
    }

    // Found by hostile texts: the quantile of a beta with alpha 1e300 took seconds to look for.
    [Fact]
    public void A_shape_beyond_all_use_is_refused()
    {
        Assert.Throws<DistributionException>(() => new ScaledBeta(1e13, 2, 0, 1));
        Assert.Throws<DistributionException>(() => new ScaledBeta(2, 1e13, 0, 1));
        Assert.Throws<DistributionException>(() => new Gamma(1e13, 1));
        Assert.Contains("certain number", Assert.Throws<DistributionException>(() => new Pert(0, 1, 2, 1e13)).Message,
            StringComparison.Ordinal);
    }
}
