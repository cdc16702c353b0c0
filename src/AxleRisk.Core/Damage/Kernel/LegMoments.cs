using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The sums of the moments 0, 1, 2 and 4 of one leg, a row a lane: the rows' spectra under the enveloping sinc^2(f s), s = contact length
/// over speed.
/// </summary>
internal static class LegMoments
{
    // sinc^2(x) = (sin(pi x) / (pi x))^2 as polynomials in x^2 of least error: for x up to 0.7, within 4.4e-7, and for x up to 1/2, within
    // 1e-6 of itself. Arrays, so that the compiler keeps them in registers instead of reading constants from memory at every point.
    private static readonly float[] Smooth =
        [0.999999558f, -3.28980225f, 4.32770023f, -3.03789012f, 1.28147463f, -0.290628781f];

    private static readonly float[] Turning = [0.999998998f, -3.28969546f, 4.32425218f, -2.99867571f, 1.10042998f];

    // Added and taken away again it leaves the nearest whole number of what is below 2^22.
    private const float Nearest = 12582912;

    /// <summary>Stores the four sums in columns of <paramref name="stride"/>.</summary>
    /// <param name="spectrum">The spectra from <see cref="RideSpectrum"/>, a register a point.</param>
    /// <param name="smooth">Their sums from <see cref="SmoothSums"/>.</param>
    /// <param name="grid">Their points.</param>
    /// <param name="shift">s of the rows in units of one over the grid's centre.</param>
    /// <param name="sums">Where to.</param>
    /// <param name="stride">From one sum to the next.</param>
    [MethodImpl(MethodImplOptions.NoInlining)] // so that the sums stay in registers
    public static void Fill<T>(ref float spectrum, ref float smooth, MomentGrid grid, T shift, ref float sums, int stride)
        where T : struct, IFloatLanes<T>
    {
        // The smooth part first: it does not wait for the loop, nor the loop for it.
        T square2 = shift * shift;
        T square4 = square2 * square2;
        T perSquare = T.Create(1) / square2;
        T e0 = T.Create(Smooth[0]) * square2;
        T e2 = T.Create(Smooth[1]) * square4;
        T e4 = T.Create(Smooth[2]) * square4 * square2;
        T e6 = T.Create(Smooth[3]) * square4 * square4;
        T e8 = T.Create(Smooth[4]) * square4 * square4 * square2;
        T e10 = T.Create(Smooth[5]) * square4 * square4 * square4;
        T m0 = Enveloped(ref smooth, 0, e0, e2, e4, e6, e8, e10);
        T m1 = Enveloped(ref smooth, SmoothSums.Even, e0, e2, e4, e6, e8, e10);
        T m2 = Enveloped(ref smooth, 1, e0, e2, e4, e6, e8, e10);
        T m4 = Enveloped(ref smooth, 2, e0, e2, e4, e6, e8, e10);

        T c0 = T.Create(Turning[0]), c1 = T.Create(Turning[1]), c2 = T.Create(Turning[2]), c3 = T.Create(Turning[3]),
            c4 = T.Create(Turning[4]);
        T nearest = T.Create(Nearest);
        ref float frequencies = ref grid.Frequencies.At(0);
        ref float weights = ref grid.Weights.At(0);
        for (int i = grid.SmoothPoints; i < grid.Points; i++)
        {
            // sinc^2 = (f s mod 1)^2 P / (f s)^2; the weights hold 1/f^2.
            T f = T.Create(Unsafe.Add(ref frequencies, i));
            T rest = T.MultiplyAdd(f, shift, nearest - T.MultiplyAdd(f, shift, nearest));
            T x = rest * rest;
            T high = T.MultiplyAdd(T.MultiplyAdd(c4, x, c3), x, c2);
            T polynomial = T.MultiplyAdd(high, x * x, T.MultiplyAdd(c1, x, c0));
            T density = T.Load(in Unsafe.Add(ref spectrum, i * T.Count)) * x * polynomial;
            ref float w = ref Unsafe.Add(ref weights, 4 * i);
            m0 = T.MultiplyAdd(density, T.Create(w), m0);
            m1 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 1)), m1);
            m2 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 2)), m2);
            m4 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 3)), m4);
        }

        T.Store(m0 * perSquare, ref sums);
        T.Store(m1 * perSquare, ref Unsafe.Add(ref sums, stride));
        T.Store(m2 * perSquare, ref Unsafe.Add(ref sums, 2 * stride));
        T.Store(m4 * perSquare, ref Unsafe.Add(ref sums, 3 * stride));
    }

    /// <summary>The sums of the moments 0 and 2 alone, of the spectra of the travel.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)] // so that the sums stay in registers
    public static void FillTravel<T>(ref float spectrum, ref float smooth, MomentGrid grid, T shift, ref float sums, int stride)
        where T : struct, IFloatLanes<T>
    {
        T square2 = shift * shift;
        T square4 = square2 * square2;
        T e0 = T.Create(Smooth[0]) * square2;
        T e2 = T.Create(Smooth[1]) * square4;
        T e4 = T.Create(Smooth[2]) * square4 * square2;
        T e6 = T.Create(Smooth[3]) * square4 * square4;
        T e8 = T.Create(Smooth[4]) * square4 * square4 * square2;
        T e10 = T.Create(Smooth[5]) * square4 * square4 * square4;
        T m0 = Enveloped(ref smooth, 0, e0, e2, e4, e6, e8, e10);
        T m2 = Enveloped(ref smooth, 1, e0, e2, e4, e6, e8, e10);
        T nearest = T.Create(Nearest);
        for (int i = grid.SmoothPoints; i < grid.Points; i++)
        {
            T f = T.Create(grid.Frequencies.At(i));
            T rest = T.MultiplyAdd(f, shift, nearest - T.MultiplyAdd(f, shift, nearest));
            T x = rest * rest;
            T polynomial = T.Create(Turning[4]);
            for (int k = 3; k >= 0; k--)
            {
                polynomial = T.MultiplyAdd(polynomial, x, T.Create(Turning[k]));
            }

            T density = T.Load(in Unsafe.Add(ref spectrum, i * T.Count)) * x * polynomial;
            m0 = T.MultiplyAdd(density, T.Create(grid.Weights.At(4 * i)), m0);
            m2 = T.MultiplyAdd(density, T.Create(grid.Weights.At(4 * i + 2)), m2);
        }

        T.Store(m0 / square2, ref sums);
        T.Store(m2 / square2, ref Unsafe.Add(ref sums, stride));
    }

    // The polynomial in (f s)^2 with each power of f^2 replaced by its moment.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Enveloped<T>(ref float smooth, int first, T e0, T e2, T e4, T e6, T e8, T e10)
        where T : struct, IFloatLanes<T>
    {
        ref float moment = ref Unsafe.Add(ref smooth, first * T.Count);
        T sum = e0 * T.Load(in moment);
        sum = T.MultiplyAdd(e2, T.Load(in Unsafe.Add(ref moment, T.Count)), sum);
        sum = T.MultiplyAdd(e4, T.Load(in Unsafe.Add(ref moment, 2 * T.Count)), sum);
        sum = T.MultiplyAdd(e6, T.Load(in Unsafe.Add(ref moment, 3 * T.Count)), sum);
        sum = T.MultiplyAdd(e8, T.Load(in Unsafe.Add(ref moment, 4 * T.Count)), sum);
        return T.MultiplyAdd(e10, T.Load(in Unsafe.Add(ref moment, 5 * T.Count)), sum);
    }
}
