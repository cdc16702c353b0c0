using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Sampling;

/// <summary>
/// Nested uniform scrambling in base 2 (Owen 1995) by a hash in which a bit is changed by itself and the more significant
/// bits alone (Laine and Karras 2011; Burley 2020, Practical hash-based Owen scrambling), here with 64 bits and a key of
/// 512. The low bits beyond the point's own become random in passing.
/// </summary>
internal readonly struct OwenScrambling
{
    private readonly Keys keys;

    /// <summary>The scrambling keyed by a lane of a stream.</summary>
    public OwenScrambling(RandomStream stream, int lane)
    {
        Vector512<ulong> words = stream.FirstWords(lane);
        for (int i = 0; i < 8; i++)
        {
            keys[i] = words[i];
        }
    }

    /// <summary>
    /// Scrambles a fraction given with its bits in reverse (bit 0 is worth 1/2) and returns it the usual way round (bit 63 is
    /// worth 1/2).
    /// </summary>
    /// <remarks>
    /// In reverse, sums and products carry from a bit to less significant ones only. Adding a key flips bits, a product with
    /// an odd key keeps the map a bijection, and x ^ x k with an even k makes a flip depend on products of the bits above it.
    /// </remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong Scramble(ulong reversed)
    {
        ulong x = reversed + keys[0];
        x ^= x * (keys[1] << 1);
        x = (x ^ keys[2]) * (keys[3] | 1);
        x ^= x * (keys[4] << 1);
        x = (x + keys[5]) * (keys[6] | 1);
        x ^= x * (keys[7] << 1);
        return Reverse(x);
    }

    /// <summary>The same of eight fractions at a time.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<ulong> Scramble(Vector512<ulong> reversed)
    {
        Vector512<ulong> x = reversed + Vector512.Create(keys[0]);
        x ^= x * Vector512.Create(keys[1] << 1);
        x = (x ^ Vector512.Create(keys[2])) * Vector512.Create(keys[3] | 1);
        x ^= x * Vector512.Create(keys[4] << 1);
        x = (x + Vector512.Create(keys[5])) * Vector512.Create(keys[6] | 1);
        x ^= x * Vector512.Create(keys[7] << 1);
        return BitReversal.Of(x);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Reverse(ulong x)
    {
        x = ((x >> 1) & 0x5555555555555555) | ((x & 0x5555555555555555) << 1);
        x = ((x >> 2) & 0x3333333333333333) | ((x & 0x3333333333333333) << 2);
        x = ((x >> 4) & 0x0F0F0F0F0F0F0F0F) | ((x & 0x0F0F0F0F0F0F0F0F) << 4);
        return BinaryPrimitives.ReverseEndianness(x);
    }

    [InlineArray(8)]
    private struct Keys
    {
        private ulong first;
    }
}
