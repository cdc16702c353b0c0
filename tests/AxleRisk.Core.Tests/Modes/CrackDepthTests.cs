using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.Core.Tests.Modes;

/// <summary>Depth of the crack over the fraction of life used.</summary>
public sealed class CrackDepthTests
{
    /// <summary>
    /// The law of Paris and Erdogan (1963), integrated: with the constant of the simplified law for steel in air of BS 7910 (from memory)
    /// 493,624.13 cycles from 0.5 to 6 mm; here the same number by counting the growth cycle by cycle along our curve.
    /// </summary>
    [Fact]
    public void The_curve_is_the_law_of_Paris_and_Erdogan_with_its_number_of_cycles()
    {
        const double c = 5.21e-13, y = 1.12, range = 100, m = 3;
        double closed = (Math.Pow(0.5, 1 - (m / 2)) - Math.Pow(6, 1 - (m / 2)))
            / (((m / 2) - 1) * c * Math.Pow(y * range * Math.Sqrt(Math.PI), m));
        Assert.Equal(493_624.13, closed, 0.01);
        var depth = new CrackDepth(0.5, 6, m);
        for (double x = 0.05; x < 1; x += 0.05)
        {
            const double h = 1e-6;
            double perCycle = (depth.At(x + h) - depth.At(x - h)) / (2 * h * closed);
            double law = c * Math.Pow(y * range * Math.Sqrt(Math.PI * depth.At(x)), m);
            Assert.Equal(1, perCycle / law, 1e-6);
        }
    }

    /// <summary>Computed with scipy from the formula.</summary>
    [Theory]
    [InlineData(0.25, 0.315931)]
    [InlineData(0.5, 0.572049)]
    [InlineData(0.75, 1.335869)]
    [InlineData(0.9, 2.862731)]
    public void Depths_of_an_exponent_of_three(double fraction, double mm)
    {
        var depth = new CrackDepth(0.2, 6, 3);
        Assert.Equal(mm, depth.At(fraction), 1e-6);
        Assert.Equal(fraction, depth.FractionAt(depth.At(fraction)), 1e-12);
    }

    /// <summary>Of an exponent of 2 the depth is exponential, and those beside it lie close.</summary>
    [Fact]
    public void The_exponential_is_the_limit_at_two()
    {
        double exponential = 0.2 * Math.Pow(6 / 0.2, 0.4);
        Assert.Equal(exponential, new CrackDepth(0.2, 6, 2).At(0.4), 1e-12);
        Assert.Equal(exponential, new CrackDepth(0.2, 6, 2.0001).At(0.4), 1e-3);
        Assert.Equal(exponential, new CrackDepth(0.2, 6, 1.9999).At(0.4), 1e-3);
        Assert.Equal(0.4, new CrackDepth(0.2, 6, 2).FractionAt(exponential), 1e-12);
    }

    [Fact]
    public void Ends_are_the_initial_depth_and_the_wall()
    {
        foreach (CrackDepth depth in (CrackDepth[])[new(0.2, 6, 3), new(0.2, 6, 2), new(0.2, 6, 1.5), Own])
        {
            Assert.Equal(0.2, depth.At(0), 1e-12);
            Assert.Equal((6, 6), (depth.At(1), depth.At(double.PositiveInfinity)));
            Assert.Equal((0, 0, 1, 1), (depth.FractionAt(0.1), depth.FractionAt(0.2), depth.FractionAt(6), depth.FractionAt(7)));
        }
    }

    [Fact]
    public void An_own_curve_is_joined_by_straight_lines()
    {
        Assert.Equal(0.6, Own.At(0.25), 1e-12);
        Assert.Equal(1, Own.At(0.5), 1e-12);
        Assert.Equal(3.5, Own.At(0.75), 1e-12);
        Assert.Equal(0.75, Own.FractionAt(3.5), 1e-12);
    }

    /// <summary>
    /// The lognormal hit/miss model of MIL-HDBK-1823A with a50 of 1.5 and a90 of 4 mm; computed with scipy.
    /// </summary>
    [Theory]
    [InlineData(1, 0.298132)]
    [InlineData(1.5, 0.5)]
    [InlineData(3, 0.817444)]
    [InlineData(4, 0.9)]
    [InlineData(6, 0.964955)]
    public void Detection_is_lognormal_in_depth(double mm, double found)
    {
        var curve = new DetectionCurve(1.5, 4);
        Assert.Equal(0.765345, curve.Sigma, 1e-6);
        Assert.Equal(found, curve.Of(mm), 1e-6);
    }

    [Fact]
    public void Detection_with_equal_depths_is_a_step()
    {
        var curve = new DetectionCurve(2, 2);
        Assert.Equal((0, 1, 1), (curve.Of(1.999), curve.Of(2), curve.Of(3)));
    }

    private static CrackDepth Own => new(new CrackCurve([0, 0.5, 1], [0.2, 1, 6], "invented"));
}
