using AxleRisk.Core.Distributions;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>
/// Reference values: the power series of the lower tail summed with 40 to 80 digits (Python mpmath 1.3), inverted by bisection;
/// 16 digits.
/// </summary>
public class GammaTests
{
    [Theory]
    [InlineData(0.05, 0.025, 0.8531887338043611, 0.1468112661956389)]
    [InlineData(0.05, 0.05, 0.8822435638856681, 0.1177564361143319)]
    [InlineData(0.5, 0.25, 0.5204998778130465, 0.4795001221869535)]
    [InlineData(0.5, 0.75, 0.7793286380801532, 0.2206713619198468)]
    [InlineData(2.5, 1.25, 0.2235049288766773, 0.7764950711233227)]
    [InlineData(2.5, 3.75, 0.813970166397133, 0.186029833602867)]
    [InlineData(30, 15.0, 0.000418449668327687, 0.9995815503316723)]
    [InlineData(30, 45.0, 0.9926628007022035, 0.007337199297796504)]
    [InlineData(1000, 937.5, 0.02229129620224988, 0.9777087037977501)]
    [InlineData(1000, 1062.5, 0.9742430778876267, 0.02575692211237334)]
    [InlineData(10000, 9375.0, 8.749719298123923e-11, 0.9999999999125028)]
    [InlineData(10000, 10000.0, 0.5013298083399552, 0.4986701916600448)]
    [InlineData(10000, 10625.0, 0.9999999995540905, 4.459095358257065e-10)]
    public void Both_tails_equal_the_reference(double shape, double x, double lower, double upper)
    {
        var gamma = new Gamma(shape, 1);
        Assert.Equal(1, gamma.Cumulative(x) / lower, 1e-12);
        Assert.Equal(1, gamma.Upper(x) / upper, 1e-12);
    }

    [Theory]
    [InlineData(0.05, 1e-12, false, 5.844632057286677e-241)]
    [InlineData(0.05, 0.001, false, 5.844632057286547e-61)]
    [InlineData(0.05, 0.5, false, 5.573878440746248e-7)]
    [InlineData(0.05, 0.999, false, 2.736458598728676)]
    [InlineData(0.05, 1e-12, true, 21.69765925039655)]
    [InlineData(0.5, 1e-12, false, 7.853981633974483e-25)]
    [InlineData(0.5, 0.5, false, 0.2274682115597864)]
    [InlineData(0.5, 0.999, false, 5.413783085331365)]
    [InlineData(0.5, 1e-12, true, 25.42206395590908)]
    [InlineData(2.5, 1e-12, false, 2.562321748415268e-5)]
    [InlineData(2.5, 0.001, false, 0.1051063013146096)]
    [InlineData(2.5, 0.999, false, 10.25750282621644)]
    [InlineData(2.5, 1e-12, true, 32.61931810668392)]
    [InlineData(30.0, 1e-12, false, 5.772993820290659)]
    [InlineData(30.0, 0.5, false, 29.66733313822123)]
    [InlineData(30.0, 1e-12, true, 85.92950921344383)]
    [InlineData(10000.0, 1e-12, false, 9312.628969854226)]
    [InlineData(10000.0, 0.001, false, 9693.824385823726)]
    [InlineData(10000.0, 0.5, false, 9999.666668642047)]
    [InlineData(10000.0, 1e-12, true, 10719.69177661663)]
    public void The_quantile_equals_the_reference(double shape, double probability, bool isUpper, double expected)
    {
        var gamma = new Gamma(shape, 1);
        double x = isUpper ? gamma.UpperQuantile(probability) : gamma.Quantile(probability);

        // The quantile is computed as a logarithm: up to 550 * 2^-53 relative at 1e-241, times the powers in the tail.
        Assert.Equal(1, x / expected, 1e-11);
    }

    [Property(MaxTest = 1000)]
    public bool The_quantile_inverts_the_cumulative_for_any_shape(ushort shapeIndex, uint probabilityIndex)
    {
        double shape = 0.02 * Math.Pow(10, 6.0 * shapeIndex / ushort.MaxValue);
        double p = (probabilityIndex + 0.5) / 4294967296.0;
        double x = new Gamma(shape, 1).Quantile(p);
        return x == 0 || Math.Abs((new Gamma(shape, 1).Cumulative(x) / p) - 1) < 1e-10;
    }

    [Fact]
    public void Mean_and_sd_give_the_gamma_that_has_them()
    {
        Gamma gamma = Gamma.FromMeanAndSd(10, 2);
        Assert.Equal(25, gamma.Shape, 1e-12);
        Assert.Equal(10, gamma.Mean, 1e-12);
        Assert.Equal(2, gamma.StandardDeviation, 1e-12);
    }
}
