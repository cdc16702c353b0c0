using AxleRisk.Core.Damage.Roads;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>What a corrugation adds to the sums of a leg: the same spectrum under a narrow Gaussian, on the full grid.</summary>
internal static class CorrugationMoments
{
    /// <summary>Fills <see cref="BatchBuffers.CorrugatedSums"/> of a leg: the plain sums where nothing is corrugated.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, int leg, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        LegColumns l = columns.Legs[leg];
        bool travels = tile.TravelSums.Length > 0;
        tile.Sums.Span.Slice(4 * leg * BatchBuffers.Rows, 4 * BatchBuffers.Rows).CopyTo(tile.CorrugatedSums.Span);
        if (travels)
        {
            tile.TravelSums.Span.Slice(2 * leg * BatchBuffers.Rows, 2 * BatchBuffers.Rows).CopyTo(tile.CorrugatedTravelSums.Span);
        }

        int corrugated = 0;
        for (int row = 0; row < rows; row++)
        {
            if (l.CorrugatedShare[first + row] != 0)
            {
                tile.Places[corrugated++] = row;
            }
        }

        ReadOnlySpan<int> places = tile.Places.AsSpan(0, corrugated);
        tile.Inputs.Pick(places, T.Count, tile.Picked);
        for (int i = 0; i < corrugated; i += T.Count)
        {
            for (int lane = 0; lane < T.Count; lane++)
            {
                int row = first + places[Math.Min(i + lane, corrugated - 1)];
                tile.InversePeak.At(lane) =
                    (float)(l.CorrugationWavelengthM[row] * MomentGrid.CentreHz / l.SpeedMPerS[row]);
            }

            T inversePeak = T.Load(in tile.InversePeak.At(0));
            T shift = T.Load(in tile.Picked.Shift(leg, i));
            if (travels)
            {
                RideSpectrum.FillBoth<T>(tile.Picked, i, MomentGrid.Full, tile.Spectrum, tile.TravelSpectrum);
            }
            else
            {
                RideSpectrum.Fill<T>(tile.Picked, i, MomentGrid.Full, tile.Spectrum);
            }

            Apply(tile.Spectrum, inversePeak);
            ref float spectrum = ref tile.Spectrum.At(0);
            ref float smooth = ref tile.SmoothSums.At(0);
            SmoothSums.Fill<T>(ref spectrum, MomentGrid.Full, ref smooth);
            LegMoments.Fill(ref spectrum, ref smooth, MomentGrid.Full, shift, ref tile.PickedSums.At(i), BatchBuffers.Rows);
            if (!travels)
            {
                continue;
            }

            Apply(tile.TravelSpectrum, inversePeak);
            ref float travel = ref tile.TravelSpectrum.At(0);
            SmoothSums.FillFirst<T>(ref travel, MomentGrid.Full, ref smooth);
            LegMoments.FillTravel(ref travel, ref smooth, MomentGrid.Full, shift, ref tile.PickedTravelSums.At(i), BatchBuffers.Rows);
        }

        for (int i = 0; i < corrugated; i++)
        {
            float factor = OverPlain(l, first + places[i], columns.Waviness[first + places[i]]);
            for (int column = 0; column < 4 * BatchBuffers.Rows; column += BatchBuffers.Rows)
            {
                tile.CorrugatedSums.At(column + places[i]) += factor * tile.PickedSums.At(column + i);
            }

            for (int column = 0; column < tile.CorrugatedTravelSums.Length; column += BatchBuffers.Rows)
            {
                tile.CorrugatedTravelSums.At(column + places[i]) += factor * tile.PickedTravelSums.At(column + i);
            }
        }
    }

    // Density at the peak over the plain road's at the grid's centre, which is the unit of the sums.
    private static float OverPlain(LegColumns leg, int row, double waviness)
    {
        double rms = leg.CorrugationRmsM[row];
        double width = Corrugation.RelativeBandwidth / leg.CorrugationWavelengthM[row];
        double density = rms * rms / (Math.Sqrt(2 * Math.PI) * width);
        return (float)(density / Road.Psd(MomentGrid.CentreHz / leg.SpeedMPerS[row], leg.RoughnessM3[row], waviness));
    }

    // Turns spectra of the plain road into those of the corrugation: they hold the plain road's f^-2, hence the factor f^2.
    private static void Apply<T>(AlignedBuffer<float> spectrum, T inversePeak)
        where T : struct, IFloatLanes<T>
    {
        MomentGrid grid = MomentGrid.Full;
        for (int i = 0; i < grid.Points; i++)
        {
            T z = (T.Create(grid.Frequencies.At(i)) * inversePeak - T.Create(1)) * T.Create((float)(1 / Corrugation.RelativeBandwidth));
            T factor = T.Create(grid.SquaredFrequencies.At(i)) * VectorMath.Exp(T.Create(-0.5f) * z * z);
            ref float at = ref spectrum.At(i * T.Count);
            T.Store(factor * T.Load(in at), ref at);
        }
    }
}
