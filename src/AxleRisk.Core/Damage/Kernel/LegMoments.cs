using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>The moments 0, 1, 2 and 4 of legs: the row's spectrum under the enveloping that goes with each leg's speed.</summary>
internal static class LegMoments
{
    /// <summary>Of one leg.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<float> Of<T>(ref float spectrum, int points, in Envelope envelope)
        where T : struct, IFloatLanes<T>
    {
        ref float value = ref envelope.Values;
        ref float slope = ref envelope.Slopes;
        T part = T.Create(envelope.Fraction);
        T m0 = T.Create(0), m1 = m0, m2 = m0, m4 = m0;
        for (int i = 0; i < points; i += T.Count)
        {
            T gain = T.MultiplyAdd(part, T.Load(in Unsafe.Add(ref slope, i)), T.Load(in Unsafe.Add(ref value, i)));
            ref float density = ref Unsafe.Add(ref spectrum, i);
            m0 = T.MultiplyAdd(gain, T.Load(in density), m0);
            m1 = T.MultiplyAdd(gain, T.Load(in Unsafe.Add(ref density, points)), m1);
            m2 = T.MultiplyAdd(gain, T.Load(in Unsafe.Add(ref density, 2 * points)), m2);
            m4 = T.MultiplyAdd(gain, T.Load(in Unsafe.Add(ref density, 3 * points)), m4);
        }

        return T.Sums(m0, m1, m2, m4);
    }

    /// <summary>Of two legs at once, which share the reading of the spectrum; the same sums as one by one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector128<float> First, Vector128<float> Second) Of<T>(
        ref float spectrum, int points, in Envelope first, in Envelope second)
        where T : struct, IFloatLanes<T>
    {
        ref float valueA = ref first.Values;
        ref float slopeA = ref first.Slopes;
        ref float valueB = ref second.Values;
        ref float slopeB = ref second.Slopes;
        T partA = T.Create(first.Fraction);
        T partB = T.Create(second.Fraction);
        T a0 = T.Create(0), a1 = a0, a2 = a0, a4 = a0;
        T b0 = a0, b1 = a0, b2 = a0, b4 = a0;
        for (int i = 0; i < points; i += T.Count)
        {
            T gainA = T.MultiplyAdd(partA, T.Load(in Unsafe.Add(ref slopeA, i)), T.Load(in Unsafe.Add(ref valueA, i)));
            T gainB = T.MultiplyAdd(partB, T.Load(in Unsafe.Add(ref slopeB, i)), T.Load(in Unsafe.Add(ref valueB, i)));
            ref float at = ref Unsafe.Add(ref spectrum, i);
            T density = T.Load(in at);
            a0 = T.MultiplyAdd(gainA, density, a0);
            b0 = T.MultiplyAdd(gainB, density, b0);
            density = T.Load(in Unsafe.Add(ref at, points));
            a1 = T.MultiplyAdd(gainA, density, a1);
            b1 = T.MultiplyAdd(gainB, density, b1);
            density = T.Load(in Unsafe.Add(ref at, 2 * points));
            a2 = T.MultiplyAdd(gainA, density, a2);
            b2 = T.MultiplyAdd(gainB, density, b2);
            density = T.Load(in Unsafe.Add(ref at, 3 * points));
            a4 = T.MultiplyAdd(gainA, density, a4);
            b4 = T.MultiplyAdd(gainB, density, b4);
        }

        return (T.Sums(a0, a1, a2, a4), T.Sums(b0, b1, b2, b4));
    }
}
