using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>The sums of every row and leg of a tile.</summary>
internal static class TileMoments
{
    /// <summary>Fills <see cref="BatchBuffers.Sums"/>; NaN in rows with a shift beyond the table.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        int legs = columns.Legs.Length;
        for (int row = 0; row < rows; row++)
        {
            float greatest = GreatestShift(row, legs, tile);
            MomentGrid grid = GridOf(row, greatest, tile);
            if (!(greatest <= grid.Table.GreatestLogShift))
            {
                for (int leg = 0; leg < legs; leg++)
                    Put(Vector128.Create(float.NaN), leg, row, tile);
                continue;
            }

            RideSpectrum.Fill<T>(ref tile.Ride.At(row), BatchBuffers.Rows, grid, tile.Spectrum);
            double waviness = columns.Waviness[first + row];
            if (waviness != 2)
                RideSpectrum.ApplyWaviness<T>(waviness, grid, tile.Spectrum);
            FillRow<T>(row, legs, grid, tile);
        }
    }

    private static void FillRow<T>(int row, int legs, MomentGrid grid, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        ref float spectrum = ref tile.Spectrum.At(0);
        ref float shift = ref tile.LogShift.At(row);
        EnvelopingTable table = grid.Table;
        int leg = 0;
        for (; leg + 1 < legs; leg += 2)
        {
            Envelope a = table.Find(Unsafe.Add(ref shift, leg * BatchBuffers.Rows));
            Envelope b = table.Find(Unsafe.Add(ref shift, (leg + 1) * BatchBuffers.Rows));
            (Vector128<float> sumsA, Vector128<float> sumsB) = LegMoments.Of<T>(ref spectrum, grid.Points, a, b);
            Put(sumsA, leg, row, tile);
            Put(sumsB, leg + 1, row, tile);
        }

        if (leg < legs)
            Put(LegMoments.Of<T>(ref spectrum, grid.Points, table.Find(Unsafe.Add(ref shift, leg * BatchBuffers.Rows))), leg, row, tile);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Put(Vector128<float> sums, int leg, int row, BatchBuffers tile)
    {
        ref float to = ref tile.Sums.At(4 * leg * BatchBuffers.Rows + row);
        to = sums[0];
        Unsafe.Add(ref to, BatchBuffers.Rows) = sums[1];
        Unsafe.Add(ref to, 2 * BatchBuffers.Rows) = sums[2];
        Unsafe.Add(ref to, 3 * BatchBuffers.Rows) = sums[3];
    }

    // NaN if any is.
    private static float GreatestShift(int row, int legs, BatchBuffers tile)
    {
        float greatest = float.NegativeInfinity;
        for (int leg = 0; leg < legs; leg++)
        {
            float shift = tile.LogShift.At(leg * BatchBuffers.Rows + row);
            greatest = shift <= greatest ? greatest : shift;
            if (float.IsNaN(greatest))
                break;
        }

        return greatest;
    }

    private static MomentGrid GridOf(int row, float greatestShift, BatchBuffers tile) =>
        greatestShift <= MomentGrid.Reduced.Table.GreatestLogShift & ReducedGridRule.Admits(
            tile.Ride.At(RideCoefficients.LowerSquared * BatchBuffers.Rows + row),
            tile.Ride.At(RideCoefficients.UpperSquared * BatchBuffers.Rows + row),
            tile.Ride.At(RideCoefficients.LowerDamping * BatchBuffers.Rows + row),
            tile.Ride.At(RideCoefficients.UpperDamping * BatchBuffers.Rows + row))
            ? MomentGrid.Reduced
            : MomentGrid.Full;
}
