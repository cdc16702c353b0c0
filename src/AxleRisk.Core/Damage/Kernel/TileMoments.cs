using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>The sums of every row and leg of a tile.</summary>
internal static class TileMoments
{
    /// <summary>Fills <see cref="BatchBuffers.Sums"/>; zeros, of which the later steps make NaN, where a shift lies beyond the table.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        int legs = columns.Legs.Length;
        for (int row = 0; row < rows; row++)
        {
            MomentGrid grid = GridOf(row, legs, tile);
            RideSpectrum.Fill<T>(ref tile.Ride.At(row), BatchBuffers.Rows, grid, tile.Spectrum);
            double waviness = columns.Waviness[first + row];
            if (waviness != 2)
                RideSpectrum.ApplyWaviness<T>(waviness, grid, tile.Spectrum);
            for (int leg = 0; leg < legs; leg++)
            {
                double shift = tile.LogShift.At(leg * BatchBuffers.Rows + row);
                Vector128<float> sums = shift <= grid.Table.GreatestLogShift
                    ? LegMoments.Sums<T>(tile.Spectrum, grid, shift)
                    : Vector128<float>.Zero;
                int at = 4 * leg * BatchBuffers.Rows + row;
                tile.Sums.At(at) = sums[0];
                tile.Sums.At(at + BatchBuffers.Rows) = sums[1];
                tile.Sums.At(at + 2 * BatchBuffers.Rows) = sums[2];
                tile.Sums.At(at + 3 * BatchBuffers.Rows) = sums[3];
            }
        }
    }

    /// <summary>The grid of a row.</summary>
    public static MomentGrid GridOf(int row, int legs, BatchBuffers tile)
    {
        ref float ride = ref tile.Ride.At(row);
        bool reduced = ReducedGridRule.Admits(
            tile.Ride.At(RideCoefficients.LowerSquared * BatchBuffers.Rows + row),
            tile.Ride.At(RideCoefficients.UpperSquared * BatchBuffers.Rows + row),
            tile.Ride.At(RideCoefficients.LowerDamping * BatchBuffers.Rows + row),
            tile.Ride.At(RideCoefficients.UpperDamping * BatchBuffers.Rows + row));
        double greatest = MomentGrid.Reduced.Table.GreatestLogShift;
        for (int leg = 0; leg < legs; leg++)
            reduced &= tile.LogShift.At(leg * BatchBuffers.Rows + row) <= greatest;
        return reduced ? MomentGrid.Reduced : MomentGrid.Full;
    }
}
