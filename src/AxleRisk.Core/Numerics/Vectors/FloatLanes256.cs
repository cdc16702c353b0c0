using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>8 single-precision lanes.</summary>
internal readonly struct FloatLanes256(Vector256<float> value) : IFloatLanes<FloatLanes256>
{
    private readonly Vector256<float> value = value;

    public static int Count => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 operator +(FloatLanes256 a, FloatLanes256 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 operator -(FloatLanes256 a, FloatLanes256 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 operator *(FloatLanes256 a, FloatLanes256 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 operator /(FloatLanes256 a, FloatLanes256 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 Create(float value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 Load(ref readonly float from) => new(Vector256.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 Load(ref readonly double from) =>
        new(Vector256.Narrow(Vector256.LoadUnsafe(in from), Vector256.LoadUnsafe(in from, 4)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(FloatLanes256 value, ref float to) => value.value.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(FloatLanes256 value, ref double to)
    {
        Vector256.WidenLower(value.value).StoreUnsafe(ref to);
        Vector256.WidenUpper(value.value).StoreUnsafe(ref to, 4);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 MultiplyAdd(FloatLanes256 a, FloatLanes256 b, FloatLanes256 c) =>
        new(Vector256.MultiplyAddEstimate(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 Sqrt(FloatLanes256 value) => new(Vector256.Sqrt(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 Abs(FloatLanes256 value) => new(Vector256.Abs(value.value));

    public static FloatLanes256 Log(FloatLanes256 value) => new(Vector256.Log(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 IfLess(FloatLanes256 a, FloatLanes256 b, FloatLanes256 then, FloatLanes256 otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes256 TimesPowerOfTwo(FloatLanes256 value, FloatLanes256 shifted) =>
        new((value.value.AsInt32() + (shifted.value.AsInt32() << 23)).AsSingle());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyNonzero(FloatLanes256 value) => !Vector256.EqualsAll(value.value, Vector256<float>.Zero);
}
