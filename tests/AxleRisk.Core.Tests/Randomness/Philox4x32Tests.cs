using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Randomness;

public class Philox4x32Tests
{
    // Known answers of Salmon et al. 2011 (their test file for 10 rounds); exact. The third is from memory, recomputed.
    [Theory]
    [InlineData(0u, 0u, 0u, 0u, 0u, 0u, 0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u)]
    [InlineData(~0u, ~0u, ~0u, ~0u, ~0u, ~0u, 0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu)]
    [InlineData(
        0x243f6a88u, 0x85a308d3u, 0x13198a2eu, 0x03707344u, 0xa4093822u, 0x299f31d0u,
        0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u)]
    public void A_block_equals_the_published_answer(
        uint c0, uint c1, uint c2, uint c3, uint k0, uint k1, uint w0, uint w1, uint w2, uint w3) =>
        Assert.Equal((w0, w1, w2, w3), Philox4x32.Block(c0, c1, c2, c3, k0, k1));

    [Theory]
    [InlineData(0ul)]
    [InlineData(1ul)]
    [InlineData((1ul << 29) - 1)] // the block number crosses 32 bits after it
    [InlineData(1ul << 29)]
    [InlineData(1ul << 55)]
    public void A_batch_equals_its_eight_blocks_bit_for_bit(ulong batch)
    {
        const ulong Stream = 0xFEDCBA9876543210, Key = 0xF123456789ABCDEF;
        (var first, var second) = PhiloxBatch.Blocks(batch, Stream, Key);
        for (int i = 0; i < 8; i++)
        {
            Assert.Equal(Philox4x32.Block(8 * batch + (ulong)i, Stream, Key), (first[i], second[i]));
        }
    }
}
