using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>
/// exp of eight numbers, written out so that it is compiled into the loops around it: the library's is a call for each half.
/// </summary>
internal static class VectorExponential
{
    private const double Log2E = 1.4426950408889634074;
    private const double Ln2High = 0.693147180369123816490;
    private const double Ln2Low = 1.90821492927058770002e-10;

    // Adding it leaves the nearest whole number in the low bits.
    private const double Shift = 6755399441055744.0;

    // Within it the result is a normal number.
    private const double Reach = 700;

    /// <summary>exp, within 1e-15 of itself; as Math.Exp in what over- and underflows.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Of(Vector512<double> x)
    {
        Vector512<double> shifted = Vector512.FusedMultiplyAdd(x, Vector512.Create(Log2E), Vector512.Create(Shift));
        Vector512<double> n = shifted - Vector512.Create(Shift);
        Vector512<double> r = Vector512.FusedMultiplyAdd(n, Vector512.Create(-Ln2High), x);
        r = Vector512.FusedMultiplyAdd(n, Vector512.Create(-Ln2Low), r);
        Vector512<double> exp = (LogExp(r).AsInt64() + (shifted.AsInt64() << 52)).AsDouble();
        Vector512<double> within = Vector512.LessThanOrEqual(Vector512.Abs(x), Vector512.Create(Reach));
        return Vector512.EqualsAll(within.AsInt64(), Vector512<long>.AllBitsSet) ? exp : Vector512.ConditionalSelect(within, exp, OfAny(x));
    }

    /// <summary>exp(x) - 1 without the cancellation near 0, within 8e-15 of itself; beyond 700 to either side as at 700.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> MinusOne(Vector512<double> x)
    {
        x = Vector512.Min(Vector512.Max(x, Vector512.Create(-Reach)), Vector512.Create(Reach));
        Vector512<double> shifted = Vector512.FusedMultiplyAdd(x, Vector512.Create(Log2E), Vector512.Create(Shift));
        Vector512<double> n = shifted - Vector512.Create(Shift);
        Vector512<double> r = Vector512.FusedMultiplyAdd(n, Vector512.Create(-Ln2High), x);
        r = Vector512.FusedMultiplyAdd(n, Vector512.Create(-Ln2Low), r);
        (Vector512<double> even, Vector512<double> odd) = Parts(r, 0);
        Vector512<double> power = (Vector512<double>.One.AsInt64() + (shifted.AsInt64() << 52)).AsDouble();

        // 2^n e^r - 1 = 2^n (e^r - 1) + (2^n - 1)
        return Vector512.FusedMultiplyAdd(power, Vector512.FusedMultiplyAdd(odd, r, even), power - Vector512<double>.One);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static Vector512<double> OfAny(Vector512<double> x) => Vector512.Exp(x);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> LogExp(Vector512<double> r)
    {
        (Vector512<double> even, Vector512<double> odd) = Parts(r, 1);
        return Vector512.FusedMultiplyAdd(odd, r, even);
    }

    // |r| up to ln(2)/2: the polynomial of least relative error, 2.2e-16; even and odd powers apart, so that the two chains
    // overlap. The odd
    // part lacks a factor r; the even part is without the 1 unless it is asked for.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector512<double> Even, Vector512<double> Odd) Parts(Vector512<double> r, double constant)
    {
        Vector512<double> s = r * r;
        Vector512<double> even = Vector512.FusedMultiplyAdd(Vector512.Create(2.762635724144722286e-7), s,
            Vector512.Create(2.480150434699768726e-5));
        Vector512<double> odd = Vector512.FusedMultiplyAdd(Vector512.Create(2.764018079620985113e-6), s,
            Vector512.Create(1.98411702704400684e-4));
        even = Vector512.FusedMultiplyAdd(even, s, Vector512.Create(1.388888893248859818e-3));
        odd = Vector512.FusedMultiplyAdd(odd, s, Vector512.Create(8.333333385667782471e-3));
        even = Vector512.FusedMultiplyAdd(even, s, Vector512.Create(0.04166666666657314261));
        odd = Vector512.FusedMultiplyAdd(odd, s, Vector512.Create(0.1666666666655440447));
        even = Vector512.FusedMultiplyAdd(even, s, Vector512.Create(0.5000000000000005617));
        odd = Vector512.FusedMultiplyAdd(odd, s, Vector512.Create(1.000000000000006742));
        return (Vector512.FusedMultiplyAdd(even, s, Vector512.Create(constant)), odd);
    }
}
