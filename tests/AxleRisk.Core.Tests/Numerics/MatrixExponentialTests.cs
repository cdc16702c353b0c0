using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

/// <summary>Matrices whose exponential is elementary (any textbook of linear differential equations).</summary>
public sealed class MatrixExponentialTests
{
    // A plane turned by w: cos and sin; each squaring doubles the error of 1e-16, so w of it.
    [Theory]
    [InlineData(1e-9)]
    [InlineData(1e-3)]
    [InlineData(0.24)]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(100)]
    [InlineData(4000)]
    public void A_rotation_turns(double w)
    {
        double[,] turned = MatrixExponential.Of(new[,] { { 0, w }, { -w, 0 } });
        double error = 2e-15 * Math.Max(1, w);
        Assert.Equal(Math.Cos(w), turned[0, 0], error);
        Assert.Equal(Math.Sin(w), turned[0, 1], Math.Min(error, 1e-14 * Math.Max(w, w * w)));
        Assert.Equal(-turned[0, 1], turned[1, 0], error);
        Assert.Equal(turned[0, 0], turned[1, 1], error);
    }

    [Fact]
    public void Diagonals_nilpotents_and_nothing()
    {
        double[,] grown = MatrixExponential.Of(new[,] { { 3.0, 0, 0 }, { 0, -20, 0 }, { 0, 0, 0.01 } });
        Assert.Equal(1, grown[0, 0] / Math.Exp(3), 1e-13);
        Assert.Equal(1, grown[1, 1] / Math.Exp(-20), 1e-12);
        Assert.Equal(1, grown[2, 2] / Math.Exp(0.01), 1e-13);
        Assert.Equal(0, grown[0, 1]);

        // exp of a chain: 1, t, t^2 / 2, not symmetric: columns carry the norm.
        double[,] chain = MatrixExponential.Of(new[,] { { 0.0, 30, 0 }, { 0, 0, 2 }, { 0, 0, 0 } });
        Assert.Equal(30, chain[0, 1], 1e-12);
        Assert.Equal(2, chain[1, 2], 1e-13);
        Assert.Equal(30, chain[0, 2], 1e-12);
        Assert.Equal(0, chain[1, 0]);
        Assert.Equal(1, MatrixExponential.Of(new double[1, 1])[0, 0]);
    }
}
