using System.Numerics;
using System.Runtime.CompilerServices;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Sampling;

/// <summary>
/// A pseudo-random permutation of 0..N-1 with random access: an alternating Feistel network over the smallest power of
/// two not below N, repeated until the value is below N (cycle walking; Black and Rogaway 2002, Ciphers with arbitrary
/// finite domains). Each half-round adds a function of one part of the bits to the other part, so it is its own inverse
/// and the whole is a bijection for every N and every key. From N = 129 on fewer than two walks are needed on average.
/// </summary>
internal readonly struct KeyedPermutation
{
    private const int HalfRounds = 8;

    // Halves of fewer bits mix too slowly: with 2 to 13 numbers some permutations came up visibly too often. A small N
    // walks longer instead.
    private const int SmallestBits = 8;

    private readonly long count;
    private readonly int rightBits;
    private readonly ulong leftMask;
    private readonly ulong rightMask;
    private readonly RoundKeys keys;

    /// <summary>The permutation of 0..<paramref name="count"/>-1 keyed by a lane of a stream.</summary>
    public KeyedPermutation(long count, RandomStream stream, int lane)
    {
        this.count = count;
        int bits = Math.Max(SmallestBits, 64 - BitOperations.LeadingZeroCount((ulong)(count - 1)));
        rightBits = bits - bits / 2;
        leftMask = (1ul << (bits / 2)) - 1;
        rightMask = (1ul << rightBits) - 1;
        for (int i = 0; i < HalfRounds; i++)
        {
            keys[i] = stream.Word(i, lane);
        }
    }

    /// <summary>Where <paramref name="index"/>, in 0..N-1, goes.</summary>
    public long Of(long index)
    {
        ulong x = (ulong)index;
        do
        {
            ulong left = x >> rightBits, right = x & rightMask;
            for (int i = 0; i < HalfRounds; i += 2)
            {
                left ^= Hash(right, keys[i]) & leftMask;
                right ^= Hash(left, keys[i + 1]) & rightMask;
            }

            x = (left << rightBits) | right;
        }
        while (x >= (ulong)count);
        return (long)x;
    }

    // Multiply-shift hashing (Dietzfelbinger, Hagerup, Katajainen, Penttonen 1997): the middle bits of the product with an
    // odd random number depend on all bits of the part.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Hash(ulong part, ulong key) => ((part ^ (key >> 32)) * (key | 1)) >> 32;

    [InlineArray(HalfRounds)]
    private struct RoundKeys
    {
        private ulong first;
    }
}
