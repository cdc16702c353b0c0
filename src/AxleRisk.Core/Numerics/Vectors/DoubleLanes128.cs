using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics;

/// <summary>2 double-precision lanes.</summary>
internal readonly struct DoubleLanes128(Vector128<double> value) : IDoubleLanes<DoubleLanes128>
{
    private readonly Vector128<double> value = value;

    public static int Count => 2;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 operator +(DoubleLanes128 a, DoubleLanes128 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 operator -(DoubleLanes128 a, DoubleLanes128 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 operator *(DoubleLanes128 a, DoubleLanes128 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 operator /(DoubleLanes128 a, DoubleLanes128 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 Create(double value) => new(Vector128.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 Load(ref readonly double from) => new(Vector128.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 Load(ref readonly float from) =>
        new(Vector128.WidenLower(Vector64.LoadUnsafe(in from).ToVector128Unsafe()));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(DoubleLanes128 value, ref double to) => value.value.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 MultiplyAdd(DoubleLanes128 a, DoubleLanes128 b, DoubleLanes128 c) =>
        new(Vector128.MultiplyAddEstimate(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 Sqrt(DoubleLanes128 value) => new(Vector128.Sqrt(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 Abs(DoubleLanes128 value) => new(Vector128.Abs(value.value));

    public static DoubleLanes128 Exp(DoubleLanes128 value) => new(Vector128.Exp(value.value));

    public static DoubleLanes128 Log(DoubleLanes128 value) => new(Vector128.Log(value.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 IfLess(DoubleLanes128 a, DoubleLanes128 b, DoubleLanes128 then, DoubleLanes128 otherwise) =>
        new(Vector128.ConditionalSelect(Vector128.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DoubleLanes128 TimesPowerOfTwo(DoubleLanes128 value, DoubleLanes128 shifted) =>
        new((value.value.AsInt64() + (shifted.value.AsInt64() << 52)).AsDouble());
}
