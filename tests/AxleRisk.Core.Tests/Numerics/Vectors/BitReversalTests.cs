using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics.Vectors;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class BitReversalTests
{
    [Property]
    public void Bit_by_bit_the_last_becomes_the_first(ulong a, ulong b)
    {
        Vector512<ulong> words = Vector512.Create(a, b, ~a, ~b, a ^ b, a + b, 1, 1ul << 63);
        Vector512<ulong> reversed = BitReversal.Of(words);
        Assert.Equal(BitReversal.BySwaps(words), reversed);
        for (int i = 0; i < Vector512<ulong>.Count; i++)
        {
            for (int bit = 0; bit < 64; bit++)
            {
                Assert.Equal((words[i] >> bit) & 1, (reversed[i] >> (63 - bit)) & 1);
            }
        }
    }
}
