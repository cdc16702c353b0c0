using System.Runtime.InteropServices;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// Record, turning points and counting against an independent program's simulation of a bimodal spectrum: 60 MPa^2/Hz on 1 to 2 Hz and 10
/// on 8 to 12 Hz (160 records of 2,048 s at 512 Hz, standard errors 0.13, 0.2 and 0.28 %). Damage per second of N S^m = 1.
/// </summary>
public class CountedSpectraTests
{
    // Here 16 records of 640 s: standard errors of 0.7, 1.1 and 1.6 %, from those above by the square root of the length.
    [Theory]
    [InlineData(3, 1.3650e5, 0.025)]
    [InlineData(4, 5.5369e6, 0.04)]
    [InlineData(5, 2.5714e8, 0.055)]
    public void A_bimodal_spectrum_has_the_damage_that_others_counted(double slope, double published, double tolerance) =>
        Near.Relative(published, DamagePerSecond(slope), tolerance);

    // Dirlik's density is known to run below the count on such spectra: the fast model's error, not the reference's.
    [Fact]
    public void Dirlik_s_density_runs_below_the_count_there() =>
        Assert.InRange(1.23880626e5 / DamagePerSecond(3), 0.88, 0.94);

    private static readonly double[] Slopes = [3, 4, 5];
    private static readonly Lazy<double[]> Counted = new(Count);

    private static double DamagePerSecond(double slope) => Counted.Value[Array.IndexOf(Slopes, slope)];

    private static double[] Count()
    {
        const int rate = 512, periods = 10, samples = rate * RecordGrid.Seconds, block = 256, lanes = LaneFourier.Lanes;
        LaneCycles[][] ofSlopes =
            [.. Slopes.Select(m => Enumerable.Range(0, 2)
                .Select(_ => new LaneCycles(block, new MinerSum(1, Curves.OneSlope(m)))).ToArray())];
        var amplitudes = new double[RecordGrid.Bins];
        for (int i = 0; i < amplitudes.Length; i++)
        {
            amplitudes[i] = Math.Sqrt((Band(i, 1, 2, 60) + Band(i, 8, 12, 10)) / RecordGrid.Seconds);
        }

        var batch = new RecordBatch(rate);
        var states = new AlignedBuffer<double>(RideMatrix.States * RecordBatch.Records);
        for (int period = 0; period < periods; period++)
        {
            batch.Draw(new RandomStream(new StreamKey(1, "bimodal")), period);
            batch.Make(amplitudes, new RideParameters(1, 1, 1, 1, 1, 0, 0), rate, states);
            for (int first = 0; first < samples; first += block)
            {
                foreach (LaneCycles[] cycles in ofSlopes)
                {
                    for (int half = 0; half < 2; half++)
                    {
                        for (int i = 0; i < block; i++)
                        {
                            MemoryMarshal.CreateReadOnlySpan(ref batch.At(first + i), RecordBatch.Records).Slice(half * lanes, lanes)
                                .CopyTo(cycles[half].Block[(i * lanes)..]);
                        }

                        cycles[half].CountBlock(block);
                    }
                }
            }
        }
        return [.. ofSlopes.Select(Damage)];

        static double Damage(LaneCycles[] cycles)
        {
            var damage = new double[RecordBatch.Records];
            cycles[0].End(damage);
            cycles[1].End(damage.AsSpan(lanes));
            return damage.Average() / (periods * RecordGrid.Seconds);
        }
    }

    private static double Band(int i, double from, double to, double density)
    {
        double f = RecordGrid.Hz(i);
        return f < from || f > to ? 0 : f == from || f == to ? density / 2 : density;
    }
}
