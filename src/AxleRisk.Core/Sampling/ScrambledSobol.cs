using System.Numerics;
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

    public override string Name => PlanName;

    public override int Dimensions => SobolDirections.Dimensions;

    public override long Samples => 1L << SobolDirections.Bits;

    private protected override void FillColumn(RandomStream stream, int dimension, long first, Span<double> unit)
    {
        OwenScrambling scrambling = new(stream, Lanes.Scrambling);
        ReadOnlySpan<ulong> columns = SobolDirections.ReversedColumns(dimension);
        ulong point = ReversedPoint(columns, first);
        for (int i = 0; i < unit.Length; i++)
        {
            unit[i] = UnitInterval.FromWord(scrambling.Scramble(point));

            // The Gray codes of consecutive numbers differ in one bit; past the plan's very last number there is none.
            point ^= columns[BitOperations.TrailingZeroCount(first + i + 1) % SobolDirections.Bits];
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
