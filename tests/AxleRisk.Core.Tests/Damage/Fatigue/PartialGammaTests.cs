using AxleRisk.Core.Damage.Fatigue;
using MathNet.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class PartialGammaTests
{
    [Theory]
    [InlineData(2.5)]
    [InlineData(3)]
    [InlineData(3.5)]
    [InlineData(4)]
    [InlineData(5.5)]
    [InlineData(6)]
    [InlineData(10)]
    public void The_closed_forms_agree_with_the_general_function(double a)
    {
        // The general function's own error is a few 1e-13.
        foreach (double x in (double[])[0, 1e-9, 0.01, 0.5, 1, 2.7, 6, 15, 60, 300, 700])
        {
            Near.Relative(PartialGamma.UpperGeneral(a, x), PartialGamma.Upper(a, x), 2e-12);
        }
    }

    [Theory]
    [InlineData(2.5)]
    [InlineData(3.3)]
    [InlineData(6)]
    public void The_scaled_lower_series_agrees_with_the_general_function(double a)
    {
        foreach (double x in (double[])[0.05, 0.3, 1])
        {
            double expected = SpecialFunctions.GammaLowerRegularized(a, x) * SpecialFunctions.Gamma(a) / Math.Pow(x, a - 1);
            Near.Relative(expected, PartialGamma.LowerScaled(a, x), 1e-11);
        }
    }

    [Fact]
    public void A_limit_beyond_all_ranges_leaves_nothing()
    {
        foreach (double a in (double[])[2.5, 3.3, 6])
        {
            Assert.Equal(0, PartialGamma.Upper(a, double.PositiveInfinity));
            Assert.Equal(0, PartialGamma.Upper(a, 1e300));
        }
    }

    [Fact]
    public void Not_a_number_stays_so()
    {
        foreach (double a in (double[])[2.5, 6])
        {
            Assert.True(double.IsNaN(PartialGamma.Upper(a, double.NaN)));
        }
    }
}
