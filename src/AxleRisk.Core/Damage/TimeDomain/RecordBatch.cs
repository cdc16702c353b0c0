using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// Sixteen independent records of a road at once: the real and the imaginary parts of eight transforms. A record of a higher rate
/// is several
/// of the base rate, each shifted by a part of a sample: the band fills the transform, and no work goes into empty frequencies.
/// </summary>
internal sealed class RecordBatch
{
    /// <summary>Records at once.</summary>
    public const int Records = LaneFourier.Width;

    private const int NumbersPerBin = 2 * Records;
    private readonly AlignedBuffer<double> normals = new(RecordGrid.Bins * NumbersPerBin);
    private readonly AlignedBuffer<double> coefficients = new(RecordGrid.Bins * NumbersPerBin);
    private readonly AlignedBuffer<double>[] samples;
    private int partsLog2;

    /// <summary>
    /// Allocates records of up to <paramref name="greatestRate"/> samples a second, <see cref="RecordGrid.BaseRate"/> times a
    /// power of two.
    /// </summary>
    public RecordBatch(int greatestRate) =>
        samples = [.. Enumerable.Range(0, greatestRate / RecordGrid.BaseRate)
            .Select(_ => new AlignedBuffer<double>(RecordGrid.BaseSamples * Records))];

    /// <summary>Samples a second of the records last made.</summary>
    public int Rate { get; private set; }

    /// <summary>Draws the standard normal numbers of a batch of records.</summary>
    /// <param name="stream">The random numbers.</param>
    /// <param name="batch">The number of the batch, from 0.</param>
    public void Draw(RandomStream stream, long batch)
    {
        stream.FillUnit(batch * normals.Length, normals.Span);
        StandardNormal.Quantiles(normals.Span, normals.Span);
    }

    /// <summary>Makes the records from the numbers last drawn.</summary>
    /// <param name="amplitudes">From <see cref="RoadAmplitudes"/>.</param>
    /// <param name="ride">The ride, for its tyre.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="states">Takes the states of the linear ride at the first sample, by state and record.</param>
    public void Make(ReadOnlySpan<double> amplitudes, in RideParameters ride, int rate, AlignedBuffer<double> states)
    {
        Rate = rate;
        LaneSteadyState.Fill(amplitudes, ride, normals, coefficients, states);
        partsLog2 = BitOperations.Log2((uint)(rate / RecordGrid.BaseRate));
        for (int part = 0; part < 1 << partsLog2; part++)
        {
            Place(samples[part], (double)part / rate);
            LaneFourier.Inverse(samples[part]);
        }
    }

    /// <summary>The samples of all records at a time: 16 values from here on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref double At(int sample) => ref samples[sample & ((1 << partsLog2) - 1)].At((sample >> partsLog2) * Records);

    // The transform of a + i b, a and b real records: at f it is half of a's and i times half of b's coefficient, at -f of their
    // conjugates.
    private void Place(AlignedBuffer<double> data, double shift)
    {
        data.Span.Clear();
        for (int i = 0; i < RecordGrid.Bins; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * RecordGrid.Hz(i) * shift);
            ref double re = ref coefficients.At(i * NumbersPerBin);
            ref double im = ref Unsafe.Add(ref re, Records);
            (Vector512<double> aRe, Vector512<double> aIm) = Turned(ref re, ref im, cos, sin);
            (Vector512<double> bRe, Vector512<double> bIm) =
                Turned(ref Unsafe.Add(ref re, LaneFourier.Lanes), ref Unsafe.Add(ref im, LaneFourier.Lanes), cos, sin);
            int bin = RecordGrid.LowestBin + i;
            ref double above = ref data.At(LaneFourier.Place(bin) * Records);
            ref double below = ref data.At(LaneFourier.Place(RecordGrid.BaseSamples - bin) * Records);
            (aRe - bIm).StoreUnsafe(ref above);
            (aIm + bRe).StoreUnsafe(ref above, LaneFourier.Lanes);
            (aRe + bIm).StoreUnsafe(ref below);
            (bRe - aIm).StoreUnsafe(ref below, LaneFourier.Lanes);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector512<double> Re, Vector512<double> Im) Turned(ref double re, ref double im, double cos, double sin)
    {
        Vector512<double> x = Vector512.LoadUnsafe(ref re), y = Vector512.LoadUnsafe(ref im);
        Vector512<double> half = Vector512.Create(0.5);
        return (half * (x * cos - y * sin), half * (x * sin + y * cos));
    }
}
