using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>The sums of every row and leg of a tile.</summary>
internal static class TileMoments
{
    /// <summary>
    /// Fills <see cref="BatchBuffers.Sums"/>; NaN where a shift is beyond <see cref="MomentGrid.GreatestShiftSeconds"/>. The rows that need
    /// the full grid are picked out and done together, whatever their place.
    /// </summary>
    public static void Fill<T>(int legs, int rows, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        int left = 0;
        for (int row = 0; row < rows; row += T.Count)
        {
            int before = left;
            for (int lane = row; lane < row + T.Count; lane++)
            {
                if (!ReducedGridRule.Admits(tile.Inputs, lane, legs))
                    tile.Places[left++] = lane;
            }

            if (left - before < T.Count)
                FillLanes<T>(tile.Inputs, row, legs, MomentGrid.Reduced, tile, tile.Sums);
        }

        if (left > 0)
            FillFull<T>(tile.Places.AsSpan(0, left), legs, tile);
    }

    private static void FillFull<T>(ReadOnlySpan<int> places, int legs, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        tile.Inputs.Pick(places, T.Count, tile.Picked);
        for (int i = 0; i < places.Length; i += T.Count)
            FillLanes<T>(tile.Picked, i, legs, MomentGrid.Full, tile, tile.PickedSums);
        for (int leg = 0; leg < legs; leg++)
        {
            for (int i = 0; i < places.Length; i++)
            {
                bool served = tile.Picked.Shift(leg, i) <= MomentGrid.GreatestShift;
                for (int column = 4 * leg * BatchBuffers.Rows; column < 4 * (leg + 1) * BatchBuffers.Rows; column += BatchBuffers.Rows)
                    tile.Sums.At(column + places[i]) = served ? tile.PickedSums.At(column + i) : float.NaN;
            }
        }
    }

    private static void FillLanes<T>(
        MomentInputs inputs, int row, int legs, MomentGrid grid, BatchBuffers tile, AlignedBuffer<float> sums)
        where T : struct, IFloatLanes<T>
    {
        ref float spectrum = ref tile.Spectrum.At(0);
        ref float smooth = ref tile.SmoothSums.At(0);
        RideSpectrum.Fill<T>(inputs, row, grid, tile.Spectrum);
        RideSpectrum.ApplyExponent<T>(inputs, row, grid, tile.Spectrum);
        SmoothSums.Fill<T>(ref spectrum, grid, ref smooth);
        for (int leg = 0; leg < legs; leg++)
        {
            T shift = T.Load(in inputs.Shift(leg, row));
            LegMoments.Fill(ref spectrum, ref smooth, grid, shift, ref sums.At(4 * leg * BatchBuffers.Rows + row), BatchBuffers.Rows);
        }
    }
}
