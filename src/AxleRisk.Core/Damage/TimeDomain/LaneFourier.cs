using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// Inverse Fourier transforms of <see cref="RecordGrid.BaseSamples"/> points, eight at a time in the lanes of a register:
/// decimation in time
/// (Cooley and Tukey 1965), in place, each quarter finished before the next so that it stays in the core's cache.
/// </summary>
internal static class LaneFourier
{
    /// <summary>Doubles a point: eight real and eight imaginary parts.</summary>
    public const int Width = 2 * Lanes;

    /// <summary>Transforms at a time.</summary>
    public const int Lanes = 8;

    private const int Length = RecordGrid.BaseSamples;

    private static readonly int[] Places = [.. Enumerable.Range(0, Length).Select(k => PlaceOf(k, Length))];

    // cos and sin of 2 pi j / length.
    private static readonly AlignedBuffer<double> Circle = MakeCircle();

    /// <summary>Where the coefficient of exp(2 pi i k t) stands before the transform.</summary>
    public static int Place(int k) => Places[k];

    /// <summary>
    /// Transforms in place, without scaling: coefficients in the order of <see cref="Place"/> to samples in that of time.
    /// </summary>
    public static void Inverse(AlignedBuffer<double> data)
    {
        const int half = Length / 2;
        Transform(data, 0, half);
        Transform(data, half, half);
        for (int j = 0; j < half; j++)
        {
            ref double first = ref data.At(j * Width);
            ref double second = ref data.At((half + j) * Width);
            (Vector512<double> re, Vector512<double> im) = Turned(ref second, j);
            Vector512<double> firstRe = Vector512.LoadUnsafe(ref first), firstIm = Vector512.LoadUnsafe(ref first, Lanes);
            Store(ref first, firstRe + re, firstIm + im);
            Store(ref second, firstRe - re, firstIm - im);
        }
    }

    // A power of four of points.
    private static void Transform(AlignedBuffer<double> data, int start, int points)
    {
        int quarter = points / 4;
        if (quarter > 1)
        {
            for (int q = 0; q < 4; q++)
            {
                Transform(data, start + q * quarter, quarter);
            }
        }
        Combine(data, start, quarter);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Combine(AlignedBuffer<double> data, int start, int quarter)
    {
        int turn = Length / (4 * quarter);
        ref double first = ref data.At(start * Width);
        for (int j = 0; j < quarter; j++)
        {
            ref double p0 = ref Unsafe.Add(ref first, j * Width);
            ref double p1 = ref Unsafe.Add(ref p0, quarter * Width);
            ref double p2 = ref Unsafe.Add(ref p1, quarter * Width);
            ref double p3 = ref Unsafe.Add(ref p2, quarter * Width);
            Vector512<double> aRe = Vector512.LoadUnsafe(ref p0), aIm = Vector512.LoadUnsafe(ref p0, Lanes);
            (Vector512<double> bRe, Vector512<double> bIm) = Turned(ref p1, j * turn);
            (Vector512<double> cRe, Vector512<double> cIm) = Turned(ref p2, 2 * j * turn);
            (Vector512<double> dRe, Vector512<double> dIm) = Turned(ref p3, 3 * j * turn);
            Vector512<double> evenRe = aRe + cRe, evenIm = aIm + cIm, oddRe = aRe - cRe, oddIm = aIm - cIm;
            Vector512<double> sumRe = bRe + dRe, sumIm = bIm + dIm, differenceRe = bRe - dRe, differenceIm = bIm - dIm;
            Store(ref p0, evenRe + sumRe, evenIm + sumIm);
            Store(ref p1, oddRe - differenceIm, oddIm + differenceRe);
            Store(ref p2, evenRe - sumRe, evenIm - sumIm);
            Store(ref p3, oddRe + differenceIm, oddIm - differenceRe);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector512<double> Re, Vector512<double> Im) Turned(ref double point, int angle)
    {
        ref double circle = ref Circle.At(2 * angle);
        Vector512<double> cos = Vector512.Create(circle), sin = Vector512.Create(Unsafe.Add(ref circle, 1));
        Vector512<double> re = Vector512.LoadUnsafe(ref point), im = Vector512.LoadUnsafe(ref point, Lanes);
        return (Vector512.FusedMultiplyAdd(re, cos, -(im * sin)), Vector512.FusedMultiplyAdd(re, sin, im * cos));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(ref double point, Vector512<double> re, Vector512<double> im)
    {
        re.StoreUnsafe(ref point);
        im.StoreUnsafe(ref point, Lanes);
    }

    private static int PlaceOf(int k, int points)
    {
        if (points == 1)
        {
            return 0;
        }

        int radix = points == Length ? 2 : 4;
        return k % radix * (points / radix) + PlaceOf(k / radix, points / radix);
    }

    private static AlignedBuffer<double> MakeCircle()
    {
        var circle = new AlignedBuffer<double>(2 * Length);
        for (int j = 0; j < Length; j++)
        {
            (circle.At(2 * j + 1), circle.At(2 * j)) = Math.SinCos(2 * Math.PI * j / Length);
        }

        return circle;
    }
}
