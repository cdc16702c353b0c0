using System.Runtime.CompilerServices;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>
/// Transcendental functions in single precision at every vector width. A lane's result does not depend on the other lanes.
/// </summary>
internal static class VectorMath
{
    private const float Log2E = 1.44269504f;
    private const float Ln2High = 0.693359375f;
    private const float Ln2Low = -2.12194440e-4f;

    // Adding it leaves the nearest whole number in the low bits.
    private const float Shift = 12582912;

    // exp(-87) = 1.6e-38: what lies below is soon no normal number.
    private const float Least = -87;

    // |r| up to ln(2)/2: the polynomial of least relative error among those that are 1 at 0, 9.2e-8.
    private static readonly float[] ExpNearZero = [1, 0.999999707f, 0.499991492f, 0.166676366f, 0.0418979754f, 0.00829030611f];

    // The polynomial of least relative error, 1.3e-7, in (x - 2.5)/(x + 2.5) for x from 0 on.
    private static readonly float[] Erfc =
    [
        1.26483807f, -0.122357917f, -0.0990185193f, 0.15765035f, -0.103017943f, 0.0326557148f, 0.00108260797f, -0.0041510826f,
        0.000305500137f,
        0.000392525739f,
    ];

    /// <summary>exp of numbers up to 87, within 3e-7 of itself; 1 of 0 to the last bit; 0 below -87.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Exp<T>(T x)
        where T : struct, IFloatLanes<T>
    {
        T shifted = T.MultiplyAdd(x, T.Create(Log2E), T.Create(Shift));
        T n = shifted - T.Create(Shift);
        T r = T.MultiplyAdd(n, T.Create(-Ln2High), x);
        r = T.MultiplyAdd(n, T.Create(-Ln2Low), r);
        T sum = T.MultiplyAdd(T.Create(ExpNearZero[5]), r, T.Create(ExpNearZero[4]));
        sum = T.MultiplyAdd(sum, r, T.Create(ExpNearZero[3]));
        sum = T.MultiplyAdd(sum, r, T.Create(ExpNearZero[2]));
        sum = T.MultiplyAdd(sum, r, T.Create(ExpNearZero[1]));
        sum = T.MultiplyAdd(sum, r, T.Create(ExpNearZero[0]));
        return T.IfLess(x, T.Create(Least), T.Create(0), T.TimesPowerOfTwo(sum, shifted));
    }

    /// <summary>P(Z &gt; z) of a standard normal Z, within 8e-6 of itself for z up to 12; 0 where it is below 1e-38.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T NormalUpper<T>(T z)
        where T : struct, IFloatLanes<T>
    {
        T size = T.Abs(z) + T.Create(1e-9f);
        T tail = T.Create(0.5f) * Exp(T.Create(-0.5f) * size * size) * ScaledErfcOfInverse(T.Create(1.41421356f) / size);
        return T.IfLess(z, T.Create(0), T.Create(1) - tail, tail);
    }

    /// <summary>
    /// <c>exp(1/y^2) erfc(1/y)</c> for y above 0, within 5e-7 of itself: with x = 1/y a polynomial in (x - 2.5)/(x + 2.5) for
    /// <c>(1 + 2x) exp(x^2) erfc(x)</c> (the substitution of Shepherd and Laframboise 1981).
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T ScaledErfcOfInverse<T>(T y)
        where T : struct, IFloatLanes<T>
    {
        T one = T.Create(1);
        T below = T.MultiplyAdd(T.Create(2.5f), y, one);
        T doubled = y + T.Create(2);
        T inverse = one / (below * doubled); // one division for two
        T q = T.MultiplyAdd(T.Create(-2.5f), y, one) * (inverse * doubled);
        T sum = T.MultiplyAdd(T.Create(Erfc[9]), q, T.Create(Erfc[8]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[7]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[6]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[5]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[4]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[3]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[2]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[1]));
        sum = T.MultiplyAdd(sum, q, T.Create(Erfc[0]));
        return sum * (inverse * below * y);
    }
}
