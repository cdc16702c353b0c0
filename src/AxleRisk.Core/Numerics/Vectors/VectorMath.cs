using System.Runtime.CompilerServices;

namespace AxleRisk.Core.Numerics;

/// <summary>Transcendental functions at every vector width. A lane's result does not depend on the other lanes.</summary>
internal static class VectorMath
{
    private const double Log2E = 1.4426950408889634074;
    private const double Ln2High = 0.693147180369123816490;
    private const double Ln2Low = 1.90821492927058770002e-10;

    // Adding it leaves the nearest whole number in the low bits.
    private const double Shift = 6755399441055744.0;

    // exp(-700) = 1e-304: what lies below is soon no normal number.
    private const double Least = -700;

    /// <summary>exp of numbers from about -700 to 700, within 1e-15 of itself; 0 below -700; as Math.Exp.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Exp<T>(T x)
        where T : struct, IDoubleLanes<T>
    {
        T shifted = T.MultiplyAdd(x, T.Create(Log2E), T.Create(Shift));
        T n = shifted - T.Create(Shift);
        T r = T.MultiplyAdd(n, T.Create(-Ln2High), x);
        r = T.MultiplyAdd(n, T.Create(-Ln2Low), r);
        return T.IfLess(x, T.Create(Least), T.Create(0), T.TimesPowerOfTwo(ExpNearZero(r), shifted));
    }

    /// <summary>
    /// <c>exp(x^2) erfc(x)</c> for x not negative, within 1e-12 of itself: a polynomial in (x-3)/(x+3) for
    /// <c>(1 + 2x) exp(x^2) erfc(x)</c> (the substitution of Shepherd and Laframboise 1981; coefficients from the Chebyshev series).
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T ScaledErfc<T>(T x)
        where T : struct, IDoubleLanes<T>
    {
        T below = x + T.Create(3);
        T doubled = T.MultiplyAdd(x, T.Create(2), T.Create(1));
        T inverse = T.Create(1) / (below * doubled); // one division for two
        T q = (x - T.Create(3)) * (inverse * doubled);
        return ScaledErfcPolynomial(q) * (inverse * below);
    }

    // |r| up to ln(2)/2, 2.2e-16; even and odd powers apart, so that the two chains overlap.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T ExpNearZero<T>(T r)
        where T : struct, IDoubleLanes<T>
    {
        T s = r * r;
        T even = T.MultiplyAdd(T.Create(2.762635724144722286e-7), s, T.Create(2.480150434699768726e-5));
        T odd = T.MultiplyAdd(T.Create(2.764018079620985113e-6), s, T.Create(1.98411702704400684e-4));
        even = T.MultiplyAdd(even, s, T.Create(1.388888893248859818e-3));
        odd = T.MultiplyAdd(odd, s, T.Create(8.333333385667782471e-3));
        even = T.MultiplyAdd(even, s, T.Create(0.04166666666657314261));
        odd = T.MultiplyAdd(odd, s, T.Create(0.1666666666655440447));
        even = T.MultiplyAdd(even, s, T.Create(0.5000000000000005617));
        odd = T.MultiplyAdd(odd, s, T.Create(1.000000000000006742));
        even = T.MultiplyAdd(even, s, T.Create(1));
        return T.MultiplyAdd(odd, r, even);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T ScaledErfcPolynomial<T>(T q)
        where T : struct, IDoubleLanes<T>
    {
        T s = q * q;
        T even = T.MultiplyAdd(T.Create(-2.725281698411957424e-8), s, T.Create(1.709939375505360476e-7));
        T odd = T.MultiplyAdd(T.Create(4.753850893120821637e-8), s, T.Create(-5.061276758835549756e-7));
        even = T.MultiplyAdd(even, s, T.Create(-5.429803692969122386e-7));
        odd = T.MultiplyAdd(odd, s, T.Create(3.340620572250462022e-6));
        even = T.MultiplyAdd(even, s, T.Create(4.827299314279155564e-6));
        odd = T.MultiplyAdd(odd, s, T.Create(-2.000223466568968863e-5));
        even = T.MultiplyAdd(even, s, T.Create(-1.051093045872548241e-4));
        odd = T.MultiplyAdd(odd, s, T.Create(1.250525262183429788e-4));
        even = T.MultiplyAdd(even, s, T.Create(1.888677428651201557e-3));
        odd = T.MultiplyAdd(odd, s, T.Create(-7.798182066738429033e-4));
        even = T.MultiplyAdd(even, s, T.Create(-0.02377051299530284572));
        odd = T.MultiplyAdd(odd, s, T.Create(2.529389266031773196e-3));
        even = T.MultiplyAdd(even, s, T.Create(-0.1192736635616905536));
        odd = T.MultiplyAdd(odd, s, T.Create(0.06830802759881013072));
        even = T.MultiplyAdd(even, s, T.Create(-0.04756229434910641687));
        odd = T.MultiplyAdd(odd, s, T.Create(0.1296451586910600333));
        even = T.MultiplyAdd(even, s, T.Create(1.253008058269708296));
        odd = T.MultiplyAdd(odd, s, T.Create(-0.1356211061244227034));
        return T.MultiplyAdd(odd, q, even);
    }
}
