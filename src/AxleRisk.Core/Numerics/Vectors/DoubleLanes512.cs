using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics;

/// <summary>8 double-precision lanes.</summary>
internal readonly struct DoubleLanes512(Vector512<double> value) : IDoubleLanes<DoubleLanes512>
{
    private readonly Vector512<double> value = value;

    public static int Count => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 operator +(DoubleLanes512 a, DoubleLanes512 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 operator -(DoubleLanes512 a, DoubleLanes512 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 operator *(DoubleLanes512 a, DoubleLanes512 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 operator /(DoubleLanes512 a, DoubleLanes512 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 Create(double value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 Load(ref readonly double from) => new(Vector512.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 Load(ref readonly float from) =>
        new(Vector512.WidenLower(Vector256.LoadUnsafe(in from).ToVector512Unsafe()));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(DoubleLanes512 value, ref double to) => value.value.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 MultiplyAdd(DoubleLanes512 a, DoubleLanes512 b, DoubleLanes512 c) =>
        new(Vector512.MultiplyAddEstimate(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 Sqrt(DoubleLanes512 value) => new(Vector512.Sqrt(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 Abs(DoubleLanes512 value) => new(Vector512.Abs(value.value));

    public static DoubleLanes512 Exp(DoubleLanes512 value) => new(Vector512.Exp(value.value));

    public static DoubleLanes512 Log(DoubleLanes512 value) => new(Vector512.Log(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 IfLess(DoubleLanes512 a, DoubleLanes512 b, DoubleLanes512 then, DoubleLanes512 otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes512 TimesPowerOfTwo(DoubleLanes512 value, DoubleLanes512 shifted) =>
        new((value.value.AsInt64() + (shifted.value.AsInt64() << 52)).AsDouble());
}
