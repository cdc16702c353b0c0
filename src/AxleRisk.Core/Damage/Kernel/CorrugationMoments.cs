using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>What a corrugation adds to the sums of a leg: the same spectrum under a narrow Gaussian, on the full grid.</summary>
internal static class CorrugationMoments
{
    // Beyond it the Gaussian is below 1e-9 of its peak.
    private const float Reach = 6.5f;

    /// <summary>Fills <see cref="BatchBuffers.CorrugatedSums"/> of a leg: the plain sums where nothing is corrugated.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, int leg, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        LegColumns l = columns.Legs[leg];
        tile.Sums.Span.Slice(4 * leg * BatchBuffers.Rows, 4 * BatchBuffers.Rows).CopyTo(tile.CorrugatedSums.Span);
        for (int row = 0; row < rows; row++)
        {
            if (l.CorrugatedShare[first + row] == 0)
                continue;
            double speed = l.SpeedMPerS[first + row];
            double wavelength = l.CorrugationWavelengthM[first + row];
            double rms = l.CorrugationRmsM[first + row];
            RideSpectrum.Fill<T>(ref tile.Ride.At(row), BatchBuffers.Rows, MomentGrid.Full, tile.Spectrum);
            float shift = tile.LogShift.At(leg * BatchBuffers.Rows + row);
            double peak = speed / (wavelength * MomentGrid.CentreHz);
            Vector128<float> sums = shift <= MomentGrid.Full.Table.GreatestLogShift
                ? Sums<T>(tile.Spectrum, shift, (float)(1 / peak))
                : Vector128.Create(float.NaN);

            // Density at the peak over the plain road's at the grid's centre, which is the unit of the sums.
            double width = Corrugation.RelativeBandwidth / wavelength;
            double density = rms * rms / (Math.Sqrt(2 * Math.PI) * width);
            double plain = Road.Psd(MomentGrid.CentreHz / speed, l.RoughnessM3[first + row], columns.Waviness[first + row]);
            float factor = (float)(density / plain);
            for (int k = 0; k < 4; k++)
                tile.CorrugatedSums.At(k * BatchBuffers.Rows + row) += factor * sums[k];
        }
    }

    // The spectrum holds the plain road's f^-2, hence the factor f^2.
    private static Vector128<float> Sums<T>(AlignedBuffer<float> spectrum, float logShift, float inversePeak)
        where T : struct, IFloatLanes<T>
    {
        MomentGrid grid = MomentGrid.Full;
        Envelope envelope = grid.Table.Find(logShift);
        T part = T.Create(envelope.Fraction);
        T m0 = T.Create(0), m1 = m0, m2 = m0, m4 = m0;
        for (int i = 0; i < grid.Points; i += T.Count)
        {
            float lowest = (float)Math.Sqrt(grid.SquaredFrequencies.At(i)) * inversePeak;
            float highest = (float)Math.Sqrt(grid.SquaredFrequencies.At(i + T.Count - 1)) * inversePeak;
            if (highest < 1 - Reach * Corrugation.RelativeBandwidth || lowest > 1 + Reach * Corrugation.RelativeBandwidth)
                continue;
            T squared = T.Load(in grid.SquaredFrequencies.At(i));
            T z = (T.Sqrt(squared) * T.Create(inversePeak) - T.Create(1)) * T.Create((float)(1 / Corrugation.RelativeBandwidth));
            T gain = T.MultiplyAdd(
                part, T.Load(in Unsafe.Add(ref envelope.Slopes, i)), T.Load(in Unsafe.Add(ref envelope.Values, i)));
            gain *= squared * T.Exp(T.Create(-0.5f) * z * z);
            m0 = T.MultiplyAdd(gain, T.Load(in spectrum.At(i)), m0);
            m1 = T.MultiplyAdd(gain, T.Load(in spectrum.At(grid.Points + i)), m1);
            m2 = T.MultiplyAdd(gain, T.Load(in spectrum.At(2 * grid.Points + i)), m2);
            m4 = T.MultiplyAdd(gain, T.Load(in spectrum.At(3 * grid.Points + i)), m4);
        }

        return T.Sums(m0, m1, m2, m4);
    }
}
