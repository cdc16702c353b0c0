using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>Densities and tails at the ends of the support and next to them: closed forms from the definitions.</summary>
public sealed class EndsTests
{
    [Theory]
    [InlineData(0.5, double.PositiveInfinity)]
    [InlineData(0.999, double.PositiveInfinity)]
    [InlineData(1, 0.25)] // an exponential: 1 / scale
    [InlineData(1.001, 0)]
    [InlineData(2, 0)]
    public void A_Weibull_density_starts_as_its_shape_says(double shape, double atEnd)
    {
        var weibull = new Weibull(shape, 4, 7);
        Assert.Equal(atEnd, weibull.Density(7));
        Assert.Equal(0, weibull.Density(Math.BitDecrement(7.0)));
        foreach (double t in (double[])[1e-9, 1e-3, 0.5, 1, 2.5])
        {
            double x = 7 + (4 * t), own = (x - 7) / 4;
            Assert.Equal(1, weibull.Density(x) / (shape / 4 * Math.Pow(own, shape - 1) * Math.Exp(-Math.Pow(own, shape))), 1e-13);
            Assert.Equal(1, weibull.Upper(x) / Math.Exp(-Math.Pow(own, shape)), 1e-13);
            Assert.Equal(1 - weibull.Upper(x), weibull.Cumulative(x), 1e-15);
        }

        Assert.Equal((0, 1), (weibull.Cumulative(7), weibull.Upper(7)));
        Assert.Equal(0, weibull.Density(1e200));
        Assert.Equal(0, weibull.Density(double.PositiveInfinity));
    }

    [Theory]
    [InlineData(0.5, double.PositiveInfinity)]
    [InlineData(1, 0.2)]
    [InlineData(2, 0)]
    public void A_gamma_density_starts_as_its_shape_says(double shape, double atEnd)
    {
        var gamma = new Gamma(shape, 5);
        Assert.Equal(atEnd, gamma.Density(0));
        Assert.Equal(0, gamma.Density(-double.Epsilon));

        // Gamma(1/2) = sqrt(pi), Gamma(1) = Gamma(2) = 1.
        double ofShape = shape == 0.5 ? Math.Sqrt(Math.PI) : 1;
        foreach (double t in (double[])[1e-12, 0.1, 1, 30])
        {
            Assert.Equal(1, gamma.Density(5 * t) / (Math.Pow(t, shape - 1) * Math.Exp(-t) / ofShape / 5), 1e-12);
        }

        Assert.Equal((0, 1), (gamma.Cumulative(0), gamma.Upper(0)));
    }

    // B(1/2, 1/2) = pi, B(1, 3) = 1/3, B(2, 2) = 1/6, B(2, 1/2) = 4/3.
    [Theory]
    [InlineData(0.5, 0.5, Math.PI, double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(1, 3, 1 / 3.0, 0.3, 0)]
    [InlineData(3, 1, 1 / 3.0, 0, 0.3)]
    [InlineData(1, 1, 1, 0.1, 0.1)]
    [InlineData(2, 2, 1 / 6.0, 0, 0)]
    [InlineData(2, 0.5, 4 / 3.0, 0, double.PositiveInfinity)]
    public void A_beta_density_ends_as_its_shapes_say(double alpha, double beta, double whole, double atLow, double atHigh)
    {
        var scaled = new ScaledBeta(alpha, beta, -4, 6);
        Assert.Equal(atLow, scaled.Density(-4), 1e-16);
        Assert.Equal(atHigh, scaled.Density(6), 1e-16);
        Assert.Equal(0, scaled.Density(Math.BitDecrement(-4.0)));
        Assert.Equal(0, scaled.Density(Math.BitIncrement(6.0)));
        foreach (double t in (double[])[1e-6, 0.1, 0.5, 0.95, 1 - 1e-6])
        {
            double x = -4 + (10 * t), left = (x + 4) / 10, right = (6 - x) / 10;
            Assert.Equal(1, scaled.Density(x) / (Math.Pow(left, alpha - 1) * Math.Pow(right, beta - 1) / whole / 10), 1e-12);
        }

        Assert.Equal(((0, 1), (1, 0)), ((scaled.Cumulative(-4), scaled.Upper(-4)), (scaled.Cumulative(6), scaled.Upper(6))));
        Assert.Equal(-4 + (10 * alpha / (alpha + beta)), scaled.Mean, 1e-14);
    }

    [Fact]
    public void A_PERT_with_its_mode_on_an_end_is_highest_there()
    {
        // Alpha 1, beta 1 + shape: density (1 + shape) / width at the mode, 0 at the other end.
        var atLow = new Pert(10, 10, 20, 3);
        Assert.Equal(0.4, atLow.Density(10), 1e-15);
        Assert.Equal(0, atLow.Density(20));
        Assert.Equal(0.4 * Math.Pow(0.9, 3), atLow.Density(11), 1e-14);
        Assert.Equal(0.4, new Pert(10, 20, 20, 3).Density(20), 1e-15);

        // Mean (low + shape mode + high) / (shape + 2), variance (mean - low)(high - mean) / (shape + 3) (Vose 2008).
        var between = new Pert(10, 13, 20, 2.5);
        double mean = (10 + (2.5 * 13) + 20) / 4.5;
        Assert.Equal(mean, between.Mean, 1e-13);
        Assert.Equal(Math.Sqrt((mean - 10) * (20 - mean) / 5.5), between.StandardDeviation, 1e-13);
    }

    [Fact]
    public void Straight_densities_have_their_heights()
    {
        var triangle = new Triangular(10, 12, 20);
        Assert.Equal([0, 0.1, 0.2, 0.1, 0], new[] { 10.0, 11, 12, 16, 20 }.Select(triangle.Density), Near);
        Assert.Equal([0, 0.05, 0.2, 0.8, 1], new[] { 10.0, 11, 12, 16, 20 }.Select(triangle.Cumulative), Near);
        Assert.Equal([1, 0.95, 0.8, 0.2, 0], new[] { 10.0, 11, 12, 16, 20 }.Select(triangle.Upper), Near);
        Assert.Equal([11, 12, 16], new[] { 0.05, 0.2, 0.8 }.Select(triangle.Quantile), Near);
        Assert.Equal([11, 12, 16], new[] { 0.95, 0.8, 0.2 }.Select(triangle.UpperQuantile), Near);
        Assert.Equal(2, new Triangular(0, 0, 1).Density(0));
        Assert.Equal(2, new Triangular(0, 1, 1).Density(1));
        var uniform = new Uniform(-1, 3);
        Assert.Equal([0, 0.25, 0.25, 0], new[] { Math.BitDecrement(-1.0), -1, 3, Math.BitIncrement(3.0) }.Select(uniform.Density));
        var exponential = new Exponential(5, 4);
        Assert.Equal((0, 1), (exponential.Cumulative(exponential.Minimum), exponential.Upper(exponential.Minimum)));
        var reciprocal = new LogUniform(0.5, 8); // ln ratio 4 ln 2
        double height = 1 / (4 * Math.Log(2));
        Assert.Equal([0, 2 * height, height, height / 8, 0], new[] { Math.BitDecrement(0.5), 0.5, 1, 8, Math.BitIncrement(8.0) }
            .Select(reciprocal.Density), Near);
        Assert.Equal([0, 0.25, 0.5, 1], new[] { 0.5, 1, 2, 8 }.Select(reciprocal.Cumulative), Near);
        Assert.Equal([1, 0.75, 0.5, 0], new[] { 0.5, 1, 2, 8 }.Select(reciprocal.Upper), Near);
    }

    [Fact]
    public void A_cut_density_keeps_its_values_on_the_cuts_and_none_beyond()
    {
        // An exponential between 1 and 3 keeps e^-1 - e^-3.
        var cut = new Truncated(new Exponential(1), 1, 3);
        double kept = Math.Exp(-1) - Math.Exp(-3);
        Assert.Equal([0, Math.Exp(-1) / kept, Math.Exp(-2) / kept, Math.Exp(-3) / kept, 0],
            new[] { Math.BitDecrement(1.0), 1, 2, 3, Math.BitIncrement(3.0) }.Select(cut.Density), Near);
        Assert.Equal([0, (Math.Exp(-1) - Math.Exp(-2)) / kept, 1], new[] { 1.0, 2, 3 }.Select(cut.Cumulative), Near);
        Assert.Equal([1, (Math.Exp(-2) - Math.Exp(-3)) / kept, 0], new[] { 1.0, 2, 3 }.Select(cut.Upper), Near);

        // By parts: 1 + (e^-1 - 3 e^-3) / kept, and of the squares likewise.
        double mean = 1 + ((Math.Exp(-1) - (3 * Math.Exp(-3))) / kept);
        double square = (2 * mean) + ((Math.Exp(-1) - (9 * Math.Exp(-3))) / kept);
        Assert.Equal(mean, cut.Mean, 1e-10);
        Assert.Equal(Math.Sqrt(square - (mean * mean)), cut.StandardDeviation, 1e-9);
    }

    // Of 1 1 2 2 2 5: atoms 0.2 at 1 and 0.4 at 2, 0.2 spread over (1, 2), 0.2 over (2, 5).
    [Fact]
    public void A_cut_sample_counts_the_atom_on_its_limit_in_both_tails()
    {
        var cut = new Truncated(new Empirical([1, 1, 2, 2, 2, 5]), 2, null);
        Assert.Equal([2 / 3.0, 1 / 3.0], [cut.Cumulative(2), cut.Upper(2)], Near);
        Assert.Equal((0, 1), (cut.Cumulative(Math.BitDecrement(2.0)), cut.Upper(Math.BitDecrement(2.0))));
    }

    [Fact]
    public void Columns_of_quantiles_keep_inside_the_ends_at_every_place()
    {
        for (int i = 1; i <= 200; i++)
        {
            var distribution = new LogUniform(0.1 * i, (0.1 * i) + (0.37 * i * i));
            double[] x = [1, 0, 0.5, 1, 1, 1, 1, 1, 1, 1, 1];
            distribution.Quantiles(x, x);
            Assert.All(x, v => Assert.InRange(v, distribution.Minimum, distribution.Maximum));
        }
    }

    private static bool Near(double a, double b) => a == b || Math.Abs(a - b) < 1e-14 * Math.Max(1, Math.Abs(a));
}
