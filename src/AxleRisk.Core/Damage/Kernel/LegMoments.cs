using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>
/// The sums of the moments 0, 1, 2 and 4 of one leg, a row a lane: the rows' spectra under the enveloping sinc^2(f s), s = contact length
/// over speed.
/// </summary>
internal static class LegMoments
{
    // sinc^2(x) = (sin(pi x) / (pi x))^2 of x^2 up to 1/4, within 1.4e-8 of itself: the polynomial of least relative error. An array, so
    // that the compiler keeps them in registers instead of reading constants from memory at every point.
    private static readonly float[] Sinc =
        [0.999999986f, -3.289864623f, 4.329142861f, -3.049621035f, 1.320935593f, -0.338028835f];

    /// <summary>Stores the four sums in columns of <paramref name="stride"/>.</summary>
    /// <param name="spectrum">The spectra from <see cref="RideSpectrum"/>, a register a point.</param>
    /// <param name="grid">Their points.</param>
    /// <param name="shift">s of the rows in units of one over the grid's centre; f s is at most 1/2 in the grid's plain points.</param>
    /// <param name="sums">Where to.</param>
    /// <param name="stride">From one sum to the next.</param>
    [MethodImpl(MethodImplOptions.NoInlining)] // so that the sums stay in registers
    public static void Fill<T>(ref float spectrum, MomentGrid grid, T shift, ref float sums, int stride)
        where T : struct, IFloatLanes<T>
    {
        T squaredShift = shift * shift;
        T c0 = T.Create(Sinc[0]), c1 = T.Create(Sinc[1]), c2 = T.Create(Sinc[2]);
        T c3 = T.Create(Sinc[3]), c4 = T.Create(Sinc[4]), c5 = T.Create(Sinc[5]);
        ref float frequencies = ref grid.Frequencies.At(0);
        ref float squares = ref grid.SquaredFrequencies.At(0);
        ref float weights = ref grid.Weights.At(0);
        T m0 = T.Create(0), m1 = m0, m2 = m0, m4 = m0;
        for (int i = grid.PlainPoints; i < grid.Points; i++)
        {
            // sinc^2 = (f s mod 1)^2 P / (f s)^2; the weights hold 1/f^2.
            T turns = T.Create(Unsafe.Add(ref frequencies, i)) * shift;
            T rest = turns - T.Round(turns);
            T square = rest * rest;
            T density = T.Load(in Unsafe.Add(ref spectrum, i * T.Count)) * square * Polynomial(square, c0, c1, c2, c3, c4, c5);
            Add(density, ref Unsafe.Add(ref weights, 4 * i), ref m0, ref m1, ref m2, ref m4);
        }

        T perSquare = T.Create(1) / squaredShift;
        m0 *= perSquare;
        m1 *= perSquare;
        m2 *= perSquare;
        m4 *= perSquare;
        for (int i = 0; i < grid.PlainPoints; i++)
        {
            T square = T.Create(Unsafe.Add(ref squares, i)) * squaredShift;
            T density = T.Load(in Unsafe.Add(ref spectrum, i * T.Count)) * Polynomial(square, c0, c1, c2, c3, c4, c5);
            Add(density, ref Unsafe.Add(ref weights, 4 * i), ref m0, ref m1, ref m2, ref m4);
        }

        T.Store(m0, ref sums);
        T.Store(m1, ref Unsafe.Add(ref sums, stride));
        T.Store(m2, ref Unsafe.Add(ref sums, 2 * stride));
        T.Store(m4, ref Unsafe.Add(ref sums, 3 * stride));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Polynomial<T>(T x, T c0, T c1, T c2, T c3, T c4, T c5)
        where T : struct, IFloatLanes<T>
    {
        T sum = T.MultiplyAdd(c5, x, c4);
        sum = T.MultiplyAdd(sum, x, c3);
        sum = T.MultiplyAdd(sum, x, c2);
        sum = T.MultiplyAdd(sum, x, c1);
        return T.MultiplyAdd(sum, x, c0);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add<T>(T density, ref float weights, ref T m0, ref T m1, ref T m2, ref T m4)
        where T : struct, IFloatLanes<T>
    {
        m0 = T.MultiplyAdd(density, T.Create(weights), m0);
        m1 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref weights, 1)), m1);
        m2 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref weights, 2)), m2);
        m4 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref weights, 3)), m4);
    }
}
