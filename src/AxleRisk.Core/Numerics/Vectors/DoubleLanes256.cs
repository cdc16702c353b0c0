using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics;

/// <summary>4 double-precision lanes.</summary>
internal readonly struct DoubleLanes256(Vector256<double> value) : IDoubleLanes<DoubleLanes256>
{
    private readonly Vector256<double> value = value;

    public static int Count => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 operator +(DoubleLanes256 a, DoubleLanes256 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 operator -(DoubleLanes256 a, DoubleLanes256 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 operator *(DoubleLanes256 a, DoubleLanes256 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 operator /(DoubleLanes256 a, DoubleLanes256 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 Create(double value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 Load(ref readonly double from) => new(Vector256.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 Load(ref readonly float from) =>
        new(Vector256.WidenLower(Vector128.LoadUnsafe(in from).ToVector256Unsafe()));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(DoubleLanes256 value, ref double to) => value.value.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 MultiplyAdd(DoubleLanes256 a, DoubleLanes256 b, DoubleLanes256 c) =>
        new(Vector256.MultiplyAddEstimate(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 Sqrt(DoubleLanes256 value) => new(Vector256.Sqrt(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 Abs(DoubleLanes256 value) => new(Vector256.Abs(value.value));

    public static DoubleLanes256 Exp(DoubleLanes256 value) => new(Vector256.Exp(value.value));

    public static DoubleLanes256 Log(DoubleLanes256 value) => new(Vector256.Log(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 IfLess(DoubleLanes256 a, DoubleLanes256 b, DoubleLanes256 then, DoubleLanes256 otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes256 TimesPowerOfTwo(DoubleLanes256 value, DoubleLanes256 shifted) =>
        new((value.value.AsInt64() + (shifted.value.AsInt64() << 52)).AsDouble());
}
