using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics.Vectors;

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
    public static void Store(FloatLanes128 value, ref double to)
    {
        Vector128.WidenLower(value.value).StoreUnsafe(ref to);
        Vector128.WidenUpper(value.value).StoreUnsafe(ref to, 2);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 MultiplyAdd(FloatLanes128 a, FloatLanes128 b, FloatLanes128 c) =>
        new(Vector128.MultiplyAddEstimate(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 Sqrt(FloatLanes128 value) => new(Vector128.Sqrt(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 Abs(FloatLanes128 value) => new(Vector128.Abs(value.value));

    public static FloatLanes128 Log(FloatLanes128 value) => new(Vector128.Log(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 IfLess(FloatLanes128 a, FloatLanes128 b, FloatLanes128 then, FloatLanes128 otherwise) =>
        new(Vector128.ConditionalSelect(Vector128.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes128 TimesPowerOfTwo(FloatLanes128 value, FloatLanes128 shifted) =>
        new((value.value.AsInt32() + (shifted.value.AsInt32() << 23)).AsSingle());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyNonzero(FloatLanes128 value) => !Vector128.EqualsAll(value.value, Vector128<float>.Zero);
}
