using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>The moments of one leg: the row's spectrum under the enveloping that goes with the leg's speed.</summary>
internal static class LegMoments
{
    /// <summary>The moments 0, 1, 2 and 4 of the spectrum at a shift.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<float> Sums<T>(AlignedBuffer<float> spectrum, MomentGrid grid, double logShift)
        where T : struct, IFloatLanes<T>
    {
        (int values, int slopes, float fraction) = grid.Table.Find(logShift);
        ref float value = ref grid.Table.At(values);
        ref float slope = ref grid.Table.At(slopes);
        ref float density0 = ref spectrum.At(0);
        ref float density1 = ref spectrum.At(grid.Points);
        ref float density2 = ref spectrum.At(2 * grid.Points);
        ref float density4 = ref spectrum.At(3 * grid.Points);
        T part = T.Create(fraction);
        T m0 = T.Create(0), m1 = m0, m2 = m0, m4 = m0;
        for (int i = 0; i < grid.Points; i += T.Count)
        {
            T gain = T.MultiplyAdd(part, T.Load(in Unsafe.Add(ref slope, i)), T.Load(in Unsafe.Add(ref value, i)));
            m0 = T.MultiplyAdd(gain, T.Load(in Unsafe.Add(ref density0, i)), m0);
            m1 = T.MultiplyAdd(gain, T.Load(in Unsafe.Add(ref density1, i)), m1);
            m2 = T.MultiplyAdd(gain, T.Load(in Unsafe.Add(ref density2, i)), m2);
            m4 = T.MultiplyAdd(gain, T.Load(in Unsafe.Add(ref density4, i)), m4);
        }

        return T.Sums(m0, m1, m2, m4);
    }
}
