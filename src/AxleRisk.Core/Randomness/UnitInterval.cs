using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Randomness;

/// <summary>
/// Random words as numbers of the open interval (0, 1): (k + 1/2) 2^-52, k the word's upper 52 bits. With 53 bits the
/// half could not be represented in the upper half of the interval and the top value would round to 1; with 52 every
/// value is exact and the set is symmetrical about 1/2.
/// </summary>
internal static class UnitInterval
{
    /// <summary>The smallest value, 2^-53.</summary>
    public const double Smallest = 1.0 / (1L << 53);

    /// <summary>The largest value, 1 - 2^-53, the double next below 1.</summary>
    public const double Largest = 1 - Smallest;

    private const ulong BitsOfOne = 0x3FF0000000000000;

    /// <summary>The value of a word.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double FromWord(ulong word) =>
        BitConverter.UInt64BitsToDouble((word >> 12) | BitsOfOne) - Largest; // 1 + k 2^-52, then shifted: both exact

    /// <summary>The values of eight words.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> FromWords(Vector512<ulong> words) =>
        ((words >>> 12) | Vector512.Create(BitsOfOne)).AsDouble() - Vector512.Create(Largest);
}
