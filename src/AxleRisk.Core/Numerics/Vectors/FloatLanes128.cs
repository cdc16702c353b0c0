using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics;

/// <summary>4 single-precision lanes.</summary>
internal readonly struct FloatLanes128(Vector128<float> value) : IFloatLanes<FloatLanes128>
{
    private readonly Vector128<float> value = value;

    public static int Count => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 operator +(FloatLanes128 a, FloatLanes128 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 operator -(FloatLanes128 a, FloatLanes128 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 operator *(FloatLanes128 a, FloatLanes128 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 operator /(FloatLanes128 a, FloatLanes128 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 Create(float value) => new(Vector128.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 Load(ref readonly float from) => new(Vector128.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 Load(ref readonly double from) =>
        new(Vector128.Narrow(Vector128.LoadUnsafe(in from), Vector128.LoadUnsafe(in from, 2)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(FloatLanes128 value, ref float to) => value.value.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 MultiplyAdd(FloatLanes128 a, FloatLanes128 b, FloatLanes128 c) =>
        new(Vector128.MultiplyAddEstimate(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 Sqrt(FloatLanes128 value) => new(Vector128.Sqrt(value.value));

    public static FloatLanes128 Exp(FloatLanes128 value) => new(Vector128.Exp(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<float> Sums(FloatLanes128 a, FloatLanes128 b, FloatLanes128 c, FloatLanes128 d)
    {
        // Transposed, then added: (a0 b0 a1 b1) + (a2 b2 a3 b3), and so on.
        Vector128<float> ab = Pairs(a.value, b.value);
        Vector128<float> cd = Pairs(c.value, d.value);
        return Vector128.Create(ab.GetLower() + ab.GetUpper(), cd.GetLower() + cd.GetUpper());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<float> Pairs(Vector128<float> a, Vector128<float> b)
    {
        Vector128<float> low = Vector128.Create(a.GetLower(), b.GetLower());
        Vector128<float> high = Vector128.Create(a.GetUpper(), b.GetUpper());
        Vector128<float> sum = low + high; // a0+a2 a1+a3 b0+b2 b1+b3
        return Vector128.Shuffle(sum, Vector128.Create(0, 2, 1, 3));
    }
}
