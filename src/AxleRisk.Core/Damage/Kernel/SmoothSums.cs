using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>
/// The moments of the spectra over a grid's smooth points, without any enveloping, a row a lane. The enveloping there is a polynomial in
/// (f s)^2, so these serve every shift s: they are summed once for all legs.
/// </summary>
internal static class SmoothSums
{
    /// <summary>Even moments, 0 to 14.</summary>
    public const int Even = 8;

    /// <summary>Odd moments, 1 to 11.</summary>
    public const int Odd = 6;

    /// <summary>All of them.</summary>
    public const int Count = Even + Odd;

    /// <summary>Fills <paramref name="sums"/>, a register a moment: the even ones, then the odd ones.</summary>
    public static void Fill<T>(ref float spectrum, MomentGrid grid, ref float sums)
        where T : struct, IFloatLanes<T>
    {
        // Two passes: fourteen sums and what they are made of do not fit sixteen registers.
        FillEven<T>(ref spectrum, grid, ref sums);
        FillOdd<T>(ref spectrum, grid, ref Unsafe.Add(ref sums, Even * T.Count));
    }

    [MethodImpl(MethodImplOptions.NoInlining)] // so that the sums stay in registers
    private static void FillEven<T>(ref float spectrum, MomentGrid grid, ref float sums)
        where T : struct, IFloatLanes<T>
    {
        ref float weights = ref grid.SmoothWeights.At(0);
        T m0 = T.Create(0), m2 = m0, m4 = m0, m6 = m0, m8 = m0, m10 = m0, m12 = m0, m14 = m0;
        for (int i = 0; i < grid.SmoothPoints; i++)
        {
            T density = T.Load(in Unsafe.Add(ref spectrum, i * T.Count));
            ref float w = ref Unsafe.Add(ref weights, Count * i);
            m0 = T.MultiplyAdd(density, T.Create(w), m0);
            m2 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 1)), m2);
            m4 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 2)), m4);
            m6 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 3)), m6);
            m8 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 4)), m8);
            m10 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 5)), m10);
            m12 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 6)), m12);
            m14 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 7)), m14);
        }

        T.Store(m0, ref sums);
        T.Store(m2, ref Unsafe.Add(ref sums, T.Count));
        T.Store(m4, ref Unsafe.Add(ref sums, 2 * T.Count));
        T.Store(m6, ref Unsafe.Add(ref sums, 3 * T.Count));
        T.Store(m8, ref Unsafe.Add(ref sums, 4 * T.Count));
        T.Store(m10, ref Unsafe.Add(ref sums, 5 * T.Count));
        T.Store(m12, ref Unsafe.Add(ref sums, 6 * T.Count));
        T.Store(m14, ref Unsafe.Add(ref sums, 7 * T.Count));
    }

    [MethodImpl(MethodImplOptions.NoInlining)] // so that the sums stay in registers
    private static void FillOdd<T>(ref float spectrum, MomentGrid grid, ref float sums)
        where T : struct, IFloatLanes<T>
    {
        ref float weights = ref grid.SmoothWeights.At(Even);
        T m1 = T.Create(0), m3 = m1, m5 = m1, m7 = m1, m9 = m1, m11 = m1;
        for (int i = 0; i < grid.SmoothPoints; i++)
        {
            T density = T.Load(in Unsafe.Add(ref spectrum, i * T.Count));
            ref float w = ref Unsafe.Add(ref weights, Count * i);
            m1 = T.MultiplyAdd(density, T.Create(w), m1);
            m3 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 1)), m3);
            m5 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 2)), m5);
            m7 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 3)), m7);
            m9 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 4)), m9);
            m11 = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 5)), m11);
        }

        T.Store(m1, ref sums);
        T.Store(m3, ref Unsafe.Add(ref sums, T.Count));
        T.Store(m5, ref Unsafe.Add(ref sums, 2 * T.Count));
        T.Store(m7, ref Unsafe.Add(ref sums, 3 * T.Count));
        T.Store(m9, ref Unsafe.Add(ref sums, 4 * T.Count));
        T.Store(m11, ref Unsafe.Add(ref sums, 5 * T.Count));
    }
}
