using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace AxleRisk.Core.Randomness;

/// <summary>Eight consecutive blocks of <see cref="Philox4x32"/> at a time, bit for bit the same.</summary>
internal static class PhiloxBatch
{
    /// <summary>The words a batch yields: two from each of its eight blocks.</summary>
    public const int Words = 16;

    private static Vector512<ulong> LowHalf => Vector512.Create(0xFFFFFFFFul);

    /// <summary>The first and second words of the blocks 8 <paramref name="batch"/> + 0..7.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector512<ulong> First, Vector512<ulong> Second) Blocks(ulong batch, ulong stream, ulong key)
    {
        // Each 64-bit lane holds one 32-bit word; its upper half may hold rubbish, which the multiplication ignores and
        // the last lines remove.
        Vector512<ulong> block = Vector512.Create(8 * batch) + Vector512.Create(0ul, 1, 2, 3, 4, 5, 6, 7);
        Vector512<ulong> c0 = block, c1 = block >>> 32;
        Vector512<ulong> c2 = Vector512.Create(stream), c3 = Vector512.Create(stream >> 32);
        Vector512<ulong> k0 = Vector512.Create(key), k1 = Vector512.Create(key >> 32);
        for (int round = 0; round < Philox4x32.Rounds; round++)
        {
            Vector512<ulong> product0 = MultiplyLowHalves(Vector512.Create((ulong)Philox4x32.Multiplier0), c0);
            Vector512<ulong> product1 = MultiplyLowHalves(Vector512.Create((ulong)Philox4x32.Multiplier1), c2);
            c0 = (product1 >>> 32) ^ c1 ^ k0;
            c1 = product1;
            c2 = (product0 >>> 32) ^ c3 ^ k1;
            c3 = product0;
            k0 += Vector512.Create((ulong)Philox4x32.Weyl0);
            k1 += Vector512.Create((ulong)Philox4x32.Weyl1);
        }

        return ((c0 & LowHalf) | (c1 << 32), (c2 & LowHalf) | (c3 << 32));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<ulong> MultiplyLowHalves(Vector512<ulong> a, Vector512<ulong> b)
    {
        if (Avx512F.IsSupported)
        {
            return Avx512F.Multiply(a.AsUInt32(), b.AsUInt32());
        }

        if (Avx2.IsSupported)
        {
            return Vector512.Create(
                Avx2.Multiply(a.GetLower().AsUInt32(), b.GetLower().AsUInt32()),
                Avx2.Multiply(a.GetUpper().AsUInt32(), b.GetUpper().AsUInt32()));
        }

        return (a & LowHalf) * (b & LowHalf);
    }
}
