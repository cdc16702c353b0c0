using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>16 single-precision lanes.</summary>
internal readonly struct FloatLanes512(Vector512<float> value) : IFloatLanes<FloatLanes512>
{
    private readonly Vector512<float> value = value;

    public static int Count => 16;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 operator +(FloatLanes512 a, FloatLanes512 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 operator -(FloatLanes512 a, FloatLanes512 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 operator *(FloatLanes512 a, FloatLanes512 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 operator /(FloatLanes512 a, FloatLanes512 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 Create(float value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 Load(ref readonly float from) => new(Vector512.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 Load(ref readonly double from) =>
        new(Vector512.Narrow(Vector512.LoadUnsafe(in from), Vector512.LoadUnsafe(in from, 8)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(FloatLanes512 value, ref float to) => value.value.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(FloatLanes512 value, ref double to)
    {
        Vector512.WidenLower(value.value).StoreUnsafe(ref to);
        Vector512.WidenUpper(value.value).StoreUnsafe(ref to, 8);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 MultiplyAdd(FloatLanes512 a, FloatLanes512 b, FloatLanes512 c) =>
        new(Vector512.MultiplyAddEstimate(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 Sqrt(FloatLanes512 value) => new(Vector512.Sqrt(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 Abs(FloatLanes512 value) => new(Vector512.Abs(value.value));

    public static FloatLanes512 Log(FloatLanes512 value) => new(Vector512.Log(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 IfLess(FloatLanes512 a, FloatLanes512 b, FloatLanes512 then, FloatLanes512 otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLanes512 TimesPowerOfTwo(FloatLanes512 value, FloatLanes512 shifted) =>
        new((value.value.AsInt32() + (shifted.value.AsInt32() << 23)).AsSingle());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyNonzero(FloatLanes512 value) => !Vector512.EqualsAll(value.value, Vector512<float>.Zero);
}
