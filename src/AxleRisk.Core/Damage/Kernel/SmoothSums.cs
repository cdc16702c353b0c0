using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

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

    private const int Half = Count / 2;

    /// <summary>Fills <paramref name="sums"/>, a register a moment: the even ones, then the odd ones.</summary>
    public static void Fill<T>(ref float spectrum, MomentGrid grid, ref float sums)
        where T : struct, IFloatLanes<T>
    {
        // Two passes: fourteen sums and what they are made of do not fit sixteen registers.
        FillHalf<T>(ref spectrum, grid, 0, ref sums);
        FillHalf<T>(ref spectrum, grid, Half, ref Unsafe.Add(ref sums, Half * T.Count));
    }

    /// <summary>Fills the even moments 0 to 12 alone: what the moments 0 and 2 of an enveloped spectrum need.</summary>
    public static void FillFirst<T>(ref float spectrum, MomentGrid grid, ref float sums)
        where T : struct, IFloatLanes<T> => FillHalf<T>(ref spectrum, grid, 0, ref sums);

    [MethodImpl(MethodImplOptions.NoInlining)] // so that the sums stay in registers
    private static void FillHalf<T>(ref float spectrum, MomentGrid grid, int first, ref float sums)
        where T : struct, IFloatLanes<T>
    {
        ref float weights = ref grid.SmoothWeights.At(first);
        T a = T.Create(0), b = a, c = a, d = a, e = a, f = a, g = a;
        for (int i = 0; i < grid.SmoothPoints; i++)
        {
            T density = T.Load(in Unsafe.Add(ref spectrum, i * T.Count));
            ref float w = ref Unsafe.Add(ref weights, Count * i);
            a = T.MultiplyAdd(density, T.Create(w), a);
            b = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 1)), b);
            c = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 2)), c);
            d = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 3)), d);
            e = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 4)), e);
            f = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 5)), f);
            g = T.MultiplyAdd(density, T.Create(Unsafe.Add(ref w, 6)), g);
        }

        T.Store(a, ref sums);
        T.Store(b, ref Unsafe.Add(ref sums, T.Count));
        T.Store(c, ref Unsafe.Add(ref sums, 2 * T.Count));
        T.Store(d, ref Unsafe.Add(ref sums, 3 * T.Count));
        T.Store(e, ref Unsafe.Add(ref sums, 4 * T.Count));
        T.Store(f, ref Unsafe.Add(ref sums, 5 * T.Count));
        T.Store(g, ref Unsafe.Add(ref sums, 6 * T.Count));
    }
}
