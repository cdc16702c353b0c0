using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public sealed class FalsePositionTests
{
    // Zeros by hand: cube root of 2, and ln of a step that is infinite on one side.
    [Theory]
    [InlineData(1, 2)]
    [InlineData(0, 9)]
    public void The_limit_is_on_the_kept_side_and_within_the_width(double kept, double above)
    {
        double x = FalsePosition.LastNotAbove(x => (x * x * x) - 2, kept, above, 1e-6);
        Assert.InRange(x, Math.Cbrt(2) - 1e-6, Math.Cbrt(2));
    }

    [Fact]
    public void The_kept_side_may_be_above_and_a_value_infinite()
    {
        double x = FalsePosition.LastNotAbove(x => x < 3 ? double.PositiveInfinity : -1, 10, 0, 1e-4);
        Assert.InRange(x, 3, 3 + 1e-4);
    }

    [Fact]
    public void A_zero_is_found_and_ends_of_one_sign_are_refused()
    {
        static double Square(double x) => (x * x) - 2;
        Assert.Equal(Math.Sqrt(2), FalsePosition.Zero(Square, new(0, -2), new(2, 2), 1e-9, 60), 1e-8);
        Assert.Throws<ArgumentException>(() => FalsePosition.Zero(Square, new(2, 2), new(3, 7), 1e-9, 60));
    }

    // However close to 0 the values are.
    [Theory]
    [InlineData(0.5, 0.7)]
    [InlineData(-0.5, -0.7)]
    public void Small_values_of_one_sign_are_refused(double low, double high) =>
        Assert.Throws<ArgumentException>(() => FalsePosition.Zero(x => x, new(0, low), new(1, high), 1e-9, 60));

    [Theory]
    [InlineData(-0.5, 0.5)]
    [InlineData(0.5, -0.5)]
    [InlineData(0, 0.5)]
    public void Small_values_of_both_signs_are_not(double low, double high) =>
        Assert.Equal(low == 0 ? 0 : 0.5, FalsePosition.Zero(x => low + (x * (high - low)), new(0, low), new(1, high), 1e-9, 60), 1e-9);
}
