using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// Sixteen records as sums of sinusoids, <c>u(t) = sum of amplitude_i (a_i cos - b_i sin)(2 pi f_i t)</c> with a and b standard normal
/// and the amplitudes those of the tyre's force: a sample of the Gaussian process of that density (Shinozuka and Deodatis 1991 on random
/// amplitudes; from memory). And the linear ride's state at their first sample, in periodic steady state.
/// </summary>
internal static class LaneSteadyState
{
    private const int Records = RecordBatch.Records;

    /// <summary>Fills the coefficients of the tyre input and the states at the first sample.</summary>
    /// <param name="amplitudes">The road.</param>
    /// <param name="ride">The ride.</param>
    /// <param name="normals">By sinusoid: 16 cosine and 16 sine numbers.</param>
    /// <param name="coefficients">Takes, by sinusoid, 16 real and 16 imaginary parts.</param>
    /// <param name="states">Takes 4 states of 16 records.</param>
    public static void Fill(
        ReadOnlySpan<double> amplitudes, in RideParameters ride, AlignedBuffer<double> normals, AlignedBuffer<double> coefficients,
        AlignedBuffer<double> states)
    {
        states.Span.Clear();
        Span<Complex> gain = stackalloc Complex[RideMatrix.States];
        for (int i = 0; i < amplitudes.Length; i++)
        {
            double f = RecordGrid.Hz(i);
            SteadyState.Gain(ride, f, gain);
            Complex tyre = amplitudes[i] * new Complex(ride.TyreNPerM, 2 * Math.PI * f * ride.TyreDampingNsPerM);
            for (int lanes = 0; lanes < Records; lanes += LaneFourier.Lanes)
            {
                int at = 2 * i * Records + lanes;
                Vector512<double> cosine = Vector512.LoadUnsafe(ref normals.At(at)),
                    sine = Vector512.LoadUnsafe(ref normals.At(at + Records));
                Vector512<double> re = cosine * tyre.Real - sine * tyre.Imaginary, im = cosine * tyre.Imaginary + sine * tyre.Real;
                re.StoreUnsafe(ref coefficients.At(at));
                im.StoreUnsafe(ref coefficients.At(at + Records));
                for (int k = 0; k < RideMatrix.States; k++)
                {
                    Add(ref states.At(k * Records + lanes), re * gain[k].Real - im * gain[k].Imaginary);
                }
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(ref double to, Vector512<double> value) => (Vector512.LoadUnsafe(ref to) + value).StoreUnsafe(ref to);
}
