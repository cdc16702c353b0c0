using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>Words with their bits in reverse, eight at a time.</summary>
internal static class BitReversal
{
    // For each half of a byte: the reversed half as the upper half of the result, and as the lower.
    private static readonly Vector256<byte> ToUpper =
        Twice([0x00, 0x80, 0x40, 0xC0, 0x20, 0xA0, 0x60, 0xE0, 0x10, 0x90, 0x50, 0xD0, 0x30, 0xB0, 0x70, 0xF0]);
    private static readonly Vector256<byte> ToLower =
        Twice([0x0, 0x8, 0x4, 0xC, 0x2, 0xA, 0x6, 0xE, 0x1, 0x9, 0x5, 0xD, 0x3, 0xB, 0x7, 0xF]);
    private static readonly Vector256<byte> BytesOfWords = Twice([7, 6, 5, 4, 3, 2, 1, 0, 15, 14, 13, 12, 11, 10, 9, 8]);

    /// <summary>Bit 0 becomes bit 63.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<ulong> Of(Vector512<ulong> x) =>
        Avx2.IsSupported ? Vector512.Create(ByTable(x.GetLower()), ByTable(x.GetUpper())) : BySwaps(x);

    /// <summary>The same with plain operations alone.</summary>
    public static Vector512<ulong> BySwaps(Vector512<ulong> x)
    {
        x = Swap(x, 1, 0x5555555555555555);
        x = Swap(x, 2, 0x3333333333333333);
        x = Swap(x, 4, 0x0F0F0F0F0F0F0F0F);
        x = Swap(x, 8, 0x00FF00FF00FF00FF);
        x = Swap(x, 16, 0x0000FFFF0000FFFF);
        return (x >>> 32) | (x << 32);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<ulong> ByTable(Vector256<ulong> x)
    {
        Vector256<byte> half = Vector256.Create((byte)0x0F);
        Vector256<byte> bytes = Avx2.Shuffle(x.AsByte(), BytesOfWords);
        Vector256<byte> lower = bytes & half;
        Vector256<byte> upper = (bytes.AsUInt64() >>> 4).AsByte() & half;
        return (Avx2.Shuffle(ToUpper, lower) | Avx2.Shuffle(ToLower, upper)).AsUInt64();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<ulong> Swap(Vector512<ulong> x, int distance, ulong mask) =>
        ((x >>> distance) & Vector512.Create(mask)) | ((x & Vector512.Create(mask)) << distance);

    private static Vector256<byte> Twice(ReadOnlySpan<byte> half) => Vector256.Create(Vector128.Create(half), Vector128.Create(half));
}
