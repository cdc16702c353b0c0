using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class StudentTTests
{
    // Closed forms: df 1 tan(pi (p - 1/2)); df 2 (2 p - 1) sqrt(2 / (4 p (1 - p))); 1e-13 relative.
    [Theory]
    [InlineData(.6)]
    [InlineData(.975)]
    [InlineData(1e-4)]
    [InlineData(1e-9)]
    public void One_and_two_degrees_of_freedom_have_closed_forms(double p)
    {
        double one = -1 / Math.Tan(Math.PI * p), two = (2 * p - 1) * Math.Sqrt(2 / (4 * p * (1 - p)));
        Assert.Equal(one, StudentT.Quantile(p, 1), 1e-13 * Math.Abs(one));
        Assert.Equal(two, StudentT.Quantile(p, 2), 1e-13 * Math.Abs(two));
    }

    // Tables printed in every textbook (from memory), to their three digits; df 9: MathNet, 1e-12.
    [Theory]
    [InlineData(5, 2.571)]
    [InlineData(9, 2.262)]
    [InlineData(30, 2.042)]
    [InlineData(120, 1.980)]
    public void The_95_percent_points_are_those_of_the_tables(double degreesOfFreedom, double expected)
    {
        Assert.Equal(expected, StudentT.Quantile(.975, degreesOfFreedom), 5.1e-4);
        Assert.Equal(
            MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, degreesOfFreedom, .975), StudentT.Quantile(.975, degreesOfFreedom), 1e-9);
    }

    [Fact]
    public void Many_degrees_of_freedom_tend_to_the_normal_distribution()
    {
        // Abramowitz and Stegun 26.7.5, z + (z^3 + z)/(4 df) + (5 z^5 + 16 z^3 + 3 z)/(96 df^2); the next term is below 1e-11.
        const double Z = 1.95996398454005, Df = 1e4;
        double expected = Z + (Z * Z * Z + Z) / (4 * Df) + (5 * Math.Pow(Z, 5) + 16 * Math.Pow(Z, 3) + 3 * Z) / (96 * Df * Df);
        Assert.Equal(expected, StudentT.Quantile(.975, Df), 1e-10);
        Assert.Equal(0, StudentT.Quantile(.5, 7));
    }

    [Fact]
    public void Impossible_arguments_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(0, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(double.NaN, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(.5, 0));
    }
}
