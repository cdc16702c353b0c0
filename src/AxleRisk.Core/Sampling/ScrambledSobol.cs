using System.Numerics;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Sampling;

/// <summary>
/// The Sobol' sequence in Gray-code order (Antonov and Saleev 1979) with an Owen scrambling of its own for each key. Every
/// sample is uniform, so estimates are unbiased; the first 2^k samples put one point in every stratum of width 2^-k.
/// Standard errors come from replicates of different seeds, not from the spread of one sample.
/// </summary>
internal sealed class ScrambledSobol : SamplingPlan
{
    public const string PlanName = "sobol";

    private const int Width = 8;

    public override string Name => PlanName;

    public override int Dimensions => SobolDirections.Dimensions;

    public override long Samples => 1L << SobolDirections.Bits;

    private protected override void FillColumn(RandomStream stream, int dimension, long first, Span<double> unit)
    {
        OwenScrambling scrambling = new(stream, Lanes.Scrambling);
        ReadOnlySpan<ulong> columns = SobolDirections.ReversedColumns(dimension);
        int head = (int)Math.Min(unit.Length, -first & (Width - 1));
        int wholeEnd = head + (unit.Length - head) / Width * Width;
        FillOneByOne(scrambling, columns, first, unit[..head]);
        FillWhole(scrambling, columns, first + head, unit[head..wholeEnd]);
        FillOneByOne(scrambling, columns, first + wholeEnd, unit[wholeEnd..]);
    }

    private static void FillOneByOne(in OwenScrambling scrambling, ReadOnlySpan<ulong> columns, long first, Span<double> unit)
    {
        for (int i = 0; i < unit.Length; i++)
        {
            unit[i] = UnitInterval.FromWord(scrambling.Scramble(ReversedPoint(columns, first + i)));
        }
    }

    // The Gray code of 8 m + j is that of 8 m with the three bits of that of j, so the points of eight numbers differ in one pattern.
    private static void FillWhole(in OwenScrambling scrambling, ReadOnlySpan<ulong> columns, long first, Span<double> unit)
    {
        Span<ulong> pattern = stackalloc ulong[Width];
        for (int j = 0; j < Width; j++)
        {
            pattern[j] = ReversedPoint(columns, j);
        }

        Vector512<ulong> within = Vector512.Create<ulong>(pattern);
        ulong point = ReversedPoint(columns, first);
        for (int i = 0; i < unit.Length; i += Width)
        {
            UnitInterval.FromWords(scrambling.Scramble(Vector512.Create(point) ^ within)).CopyTo(unit[i..]);

            // The Gray codes of consecutive numbers differ in one bit; past the plan's very last number there is none.
            point ^= pattern[^1] ^ columns[BitOperations.TrailingZeroCount(first + i + Width) % SobolDirections.Bits];
        }
    }

    /// <summary>The unscrambled point of a sample number, its bits in reverse.</summary>
    internal static ulong ReversedPoint(ReadOnlySpan<ulong> columns, long number)
    {
        ulong point = 0;
        for (long gray = number ^ (number >> 1); gray != 0; gray &= gray - 1)
        {
            point ^= columns[BitOperations.TrailingZeroCount(gray)];
        }

        return point;
    }
}
