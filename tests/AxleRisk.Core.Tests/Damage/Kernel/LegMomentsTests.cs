using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class LegMomentsTests
{
    private static readonly double[] Orders = [0, 1, 2, 4];

    [Fact]
    public void The_sums_are_those_of_the_enveloped_spectrum_term_by_term_for_every_shift_of_every_grid()
    {
        foreach (MomentGrid grid in MomentGrid.All)
        {
            for (double shift = MomentGrid.LeastShiftSeconds; shift <= grid.Rule.GreatestShiftSeconds; shift *= 1.37)
            {
                float[] sums = Sums(grid, shift, out double[] gain);
                for (int k = 0; k < Orders.Length; k++)
                {
                    double expected = 0;
                    for (int i = 0; i < grid.Points; i++)
                    {
                        double f = grid.Frequencies.At(i);
                        double x = f * MomentGrid.CentreHz * shift;
                        double sinc = x == 0 ? 1 : Math.Sin(Math.PI * x) / (Math.PI * x);

                        // The gain's f^4 over the road's f^2; the first weight is the trapezoid's, times f^4 over f^2 in the smooth part.
                        double weight = i < grid.SmoothPoints
                            ? grid.SmoothWeights.At(SmoothSums.Count * i) / (f * f) : grid.Weights.At(4 * i);
                        expected += gain[i] * weight * Math.Pow(f, 2 + Orders[k]) * sinc * sinc;
                    }

                    Assert.InRange(sums[k] / expected, 1 - 1e-5, 1 + 1e-5);
                }
            }
        }
    }

    [Fact]
    public void The_coarser_grids_have_the_moments_of_the_oracles_points()
    {
        // A spectrum as smooth as a ride well within the rules: one broad resonance at 9 Hz.
        MomentGrid full = MomentGrid.Full;
        float[] expected = Sums(full, 0.01, out _);
        foreach (MomentGrid grid in MomentGrid.All)
        {
            float[] sums = Sums(grid, 0.01, out _);
            for (int k = 0; k < sums.Length; k++)
            {
                Assert.InRange(sums[k] / expected[k], 1 - 1e-4, 1 + 1e-4);
            }
        }
    }

    // The gain of one resonance at 9 Hz with damping 0.3, per f^4.
    private static float[] Sums(MomentGrid grid, double shiftSeconds, out double[] gain)
    {
        gain = new double[grid.Points];
        var spectrum = new AlignedBuffer<float>(grid.Points * FloatLanes256.Count);
        for (int i = 0; i < grid.Points; i++)
        {
            double ratio = Math.Pow(grid.Frequencies.At(i) * MomentGrid.CentreHz / 9, 2);
            gain[i] = 1 / ((1 - ratio) * (1 - ratio) + 4 * 0.3 * 0.3 * ratio);
            spectrum.Span.Slice(i * FloatLanes256.Count, FloatLanes256.Count).Fill((float)gain[i]);
        }

        var smooth = new AlignedBuffer<float>(SmoothSums.Count * FloatLanes256.Count);
        var sums = new AlignedBuffer<float>(4 * FloatLanes256.Count);
        SmoothSums.Fill<FloatLanes256>(ref spectrum.At(0), grid, ref smooth.At(0));
        var shift = FloatLanes256.Create((float)(shiftSeconds * MomentGrid.CentreHz));
        LegMoments.Fill(ref spectrum.At(0), ref smooth.At(0), grid, shift, ref sums.At(0), FloatLanes256.Count);
        return [.. Enumerable.Range(0, 4).Select(k => sums.At(k * FloatLanes256.Count))];
    }
}
