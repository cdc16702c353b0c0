using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Randomness;

public class UnitIntervalTests
{
    [Fact]
    public void The_ends_are_never_reached()
    {
        Assert.Equal(Math.Pow(2, -53), UnitInterval.FromWord(0));
        Assert.Equal(Math.BitDecrement(1), UnitInterval.FromWord(ulong.MaxValue));
        Assert.Equal(UnitInterval.Smallest, UnitInterval.FromWord(0xFFF));
    }

    // Exact: every value is a multiple of 2^-53 below 1.
    [Theory]
    [InlineData(0ul)]
    [InlineData(1ul)]
    [InlineData(0x8000000000000ul)]
    [InlineData(0xFFFFFFFFFFFFFul)]
    public void The_value_of_a_word_is_its_upper_52_bits_and_a_half(ulong k)
    {
        Assert.Equal((2 * k + 1) * Math.Pow(2, -53), UnitInterval.FromWord(k << 12));
        Assert.Equal(1 - UnitInterval.FromWord(k << 12), UnitInterval.FromWord(~(k << 12)));
    }
}
