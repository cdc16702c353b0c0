using System.Runtime.CompilerServices;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The counting methods, several rows at a time: from the sums of a leg to <see cref="RangeParts"/>.</summary>
internal static class CountingBatch
{
    /// <summary>The first part that a method uses; it uses all from there on.</summary>
    public static int FirstPart(CountingMethod method) => method switch
    {
        CountingMethod.Dirlik => RangeParts.Exponential,
        CountingMethod.TovoBenasciutti => RangeParts.FirstRayleigh,
        _ => RangeParts.Count - 1,
    };

    /// <summary>Fills the parts from a leg's sums, columns of <paramref name="stride"/>.</summary>
    public static void Fill<T>(
        CountingMethod method, ref float sums, int stride, ref float scaleRoot, int rows, RangeParts parts)
        where T : struct, IFloatLanes<T>
    {
        switch (method)
        {
            case CountingMethod.Dirlik:
                FillDirlik<T>(ref sums, stride, ref scaleRoot, rows, parts);
                break;
            case CountingMethod.TovoBenasciutti:
                FillTovoBenasciutti<T>(ref sums, stride, ref scaleRoot, rows, parts);
                break;
            default:
                FillNarrowBand<T>(ref sums, stride, ref scaleRoot, rows, parts);
                break;
        }
    }

    // Dirlik.From, and the scales 2 sigma Q, 2 sqrt(2) sigma R, 2 sqrt(2) sigma
    private static void FillDirlik<T>(ref float sums, int stride, ref float scaleRoot, int rows, RangeParts parts)
        where T : struct, IFloatLanes<T>
    {
        T one = T.Create(1);
        for (int row = 0; row < rows; row += T.Count)
        {
            var m = MomentLanes<T>.From(ref Unsafe.Add(ref sums, row), stride, T.Load(in Unsafe.Add(ref scaleRoot, row)));
            T a2 = m.Alpha2;
            T xm = m.Alpha1 * a2;
            T square = a2 * a2;
            T d1 = T.Create(2) * (xm - square) / (one + square);
            T rest = one - a2 - d1 + d1 * d1;
            T top = a2 - xm - d1 * d1; // R = top / rest
            T gap = rest - top; // 1 - R = gap / rest
            T common = one / (rest * gap);
            T r = T.Abs(top * gap * common);
            T d2 = rest * rest * rest * common;
            T d3 = one - d1 - d2;
            T reduced = T.Create((float)(1.25 * 0.70710678118654752440)) * (a2 - d3 - d2 * top * gap * common); // D1 Q / sqrt(2)
            T inverses = one / (d1 * reduced * r);
            T peaks = T.IfLess(T.Create(0), reduced * d1, m.ServedPeaks, T.Create(float.NaN));
            parts.Put(0, row, peaks * d1, m.Scale * reduced * reduced * r * inverses, m.Inverse * d1 * d1 * r * inverses);
            parts.Put(1, row, peaks * d2, m.Scale * r, m.Inverse * d1 * reduced * inverses);
            parts.Put(2, row, peaks * d3, m.Scale, m.Inverse);
        }
    }

    // NarrowBand.DamagePerSecond
    private static void FillNarrowBand<T>(ref float sums, int stride, ref float scaleRoot, int rows, RangeParts parts)
        where T : struct, IFloatLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            var m = MomentLanes<T>.From(ref Unsafe.Add(ref sums, row), stride, T.Load(in Unsafe.Add(ref scaleRoot, row)));
            parts.Put(2, row, m.ServedPeaks * m.Alpha2, m.Scale, m.Inverse);
        }
    }

    // TovoBenasciutti.DamagePerSecond
    private static void FillTovoBenasciutti<T>(ref float sums, int stride, ref float scaleRoot, int rows, RangeParts parts)
        where T : struct, IFloatLanes<T>
    {
        T zero = T.Create(0);
        T one = T.Create(1);
        for (int row = 0; row < rows; row += T.Count)
        {
            var m = MomentLanes<T>.From(ref Unsafe.Add(ref sums, row), stride, T.Load(in Unsafe.Add(ref scaleRoot, row)));
            T a1 = m.Alpha1;
            T a2 = m.Alpha2;
            T first = T.Create(1.112f) * (one + a1 * a2 - (a1 + a2)) * VectorMath.Exp(T.Create(2.11f) * a2);
            T b = (a1 - a2) * (first + a1 - a2) / ((a2 - one) * (a2 - one));
            b = T.IfLess(b, zero, zero, T.IfLess(one, b, one, b));
            T peaks = m.ServedPeaks;
            parts.Put(1, row, peaks * (one - b), m.Scale * a2, m.Inverse / a2);
            parts.Put(2, row, peaks * b * a2, m.Scale, m.Inverse);
        }
    }
}
