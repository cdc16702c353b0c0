using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The sums of every row and leg of a tile.</summary>
internal static class TileMoments
{
    /// <summary>
    /// Fills <see cref="BatchBuffers.Sums"/>, each row on the cheapest grid whose rule it keeps; NaN where a shift is beyond the
    /// last grid's
    /// greatest. Rows of the first grid are done where they are; those of another are picked out and done together, whatever their place.
    /// </summary>
    public static void Fill<T>(int legs, int rows, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        ReadOnlySpan<MomentGrid> grids = MomentGrid.All.AsSpan();
        for (int row = 0; row < rows; row += T.Count)
        {
            T first = grids[0].Rule.Admits<T>(tile.Inputs, row, legs);
            T grid = T.Create(grids.Length - 1);
            for (int g = grids.Length - 2; g >= 0; g--)
            {
                grid = T.IfLess(T.Create(0), g == 0 ? first : grids[g].Rule.Admits<T>(tile.Inputs, row, legs), T.Create(g), grid);
            }

            T.Store(grid, ref tile.Grid.At(row));
            if (T.AnyNonzero(first))
            {
                FillLanes<T>(tile.Inputs, row, legs, grids[0], tile, tile.Sums, tile.TravelSums);
            }
        }

        for (int g = 1; g < grids.Length; g++)
        {
            FillPicked<T>(rows, legs, grids[g], g, tile);
        }
    }

    private static void FillPicked<T>(int rows, int legs, MomentGrid grid, int number, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        int picked = 0;
        for (int row = 0; row < rows; row++)
        {
            if (tile.Grid.At(row) == number)
            {
                tile.Places[picked++] = row;
            }
        }

        if (picked == 0)
        {
            return;
        }

        ReadOnlySpan<int> places = tile.Places.AsSpan(0, picked);
        tile.Inputs.Pick(places, T.Count, tile.Picked);
        for (int i = 0; i < places.Length; i += T.Count)
        {
            FillLanes<T>(tile.Picked, i, legs, grid, tile, tile.PickedSums, tile.PickedTravelSums);
        }

        float greatestShift = (float)(grid.Rule.GreatestShiftSeconds * MomentGrid.CentreHz);
        for (int leg = 0; leg < legs; leg++)
        {
            for (int i = 0; i < places.Length; i++)
            {
                bool served = tile.Picked.Shift(leg, i) <= greatestShift;
                Put(tile.PickedSums, i, 4, tile.Sums, places[i]);
                if (tile.TravelSums.Length > 0)
                {
                    Put(tile.PickedTravelSums, i, 2, tile.TravelSums, places[i]);
                }

                void Put(AlignedBuffer<float> from, int at, int columns, AlignedBuffer<float> to, int place)
                {
                    for (int column = columns * leg * BatchBuffers.Rows; column < columns * (leg + 1)
                        * BatchBuffers.Rows; column += BatchBuffers.Rows)
                    {
                        to.At(column + place) = served ? from.At(column + at) : float.NaN;
                    }
                }
            }
        }
    }

    private static void FillLanes<T>(
        MomentInputs inputs, int row, int legs, MomentGrid grid, BatchBuffers tile, AlignedBuffer<float> sums,
            AlignedBuffer<float> travelSums)
        where T : struct, IFloatLanes<T>
    {
        ref float spectrum = ref tile.Spectrum.At(0);
        ref float smooth = ref tile.SmoothSums.At(0);
        bool travels = travelSums.Length > 0;
        if (travels)
        {
            RideSpectrum.FillBoth<T>(inputs, row, grid, tile.Spectrum, tile.TravelSpectrum);
        }
        else
        {
            RideSpectrum.Fill<T>(inputs, row, grid, tile.Spectrum);
        }

        RideSpectrum.ApplyExponent<T>(inputs, row, grid, tile.Spectrum);
        SmoothSums.Fill<T>(ref spectrum, grid, ref smooth);
        for (int leg = 0; leg < legs; leg++)
        {
            T shift = T.Load(in inputs.Shift(leg, row));
            LegMoments.Fill(ref spectrum, ref smooth, grid, shift, ref sums.At(4 * leg * BatchBuffers.Rows + row), BatchBuffers.Rows);
        }

        if (!travels)
        {
            return;
        }

        RideSpectrum.ApplyExponent<T>(inputs, row, grid, tile.TravelSpectrum);
        ref float travel = ref tile.TravelSpectrum.At(0);
        SmoothSums.FillFirst<T>(ref travel, grid, ref smooth);
        for (int leg = 0; leg < legs; leg++)
        {
            T shift = T.Load(in inputs.Shift(leg, row));
            LegMoments.FillTravel(ref travel, ref smooth, grid, shift, ref travelSums.At(2 * leg * BatchBuffers.Rows + row),
                BatchBuffers.Rows);
        }
    }
}
