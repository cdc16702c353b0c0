using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.Arm;
using System.Runtime.Intrinsics.X86;

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

    public static FloatLanes128 Log(FloatLanes128 value) => new(Vector128.Log(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<float> Sums(FloatLanes128 a, FloatLanes128 b, FloatLanes128 c, FloatLanes128 d)
    {
        if (Sse3.IsSupported)
            return Sse3.HorizontalAdd(Sse3.HorizontalAdd(a.value, b.value), Sse3.HorizontalAdd(c.value, d.value));
        if (AdvSimd.Arm64.IsSupported)
            return AdvSimd.Arm64.AddPairwise(AdvSimd.Arm64.AddPairwise(a.value, b.value), AdvSimd.Arm64.AddPairwise(c.value, d.value));
        return Vector128.Create(Vector128.Sum(a.value), Vector128.Sum(b.value), Vector128.Sum(c.value), Vector128.Sum(d.value));
    }
}
