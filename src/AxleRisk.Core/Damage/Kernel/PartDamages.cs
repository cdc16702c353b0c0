using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// <see cref="PartIntegral"/> several rows at a time: a part's damage per second in units of that of a cycle at the knee.
/// </summary>
internal static class PartDamages
{
    /// <summary>Adds a part to <paramref name="sum"/>.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="part">Which.</param>
    /// <param name="integral">The closed form for its shape.</param>
    /// <param name="cutOff">Cut-off over knee, by row; used if <paramref name="hasCutOff"/>.</param>
    /// <param name="hasCutOff">Whether any row's curve has a cut-off.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="sum">The damage so far.</param>
    public static void Add<T>(RangeParts parts, int part, PartIntegral integral, ref float cutOff, bool hasCutOff, int rows, ref float sum)
        where T : struct, IFloatLanes<T>
    {
        if (hasCutOff)
        {
            FillCut<T>(parts, part, integral, ref cutOff, rows);
        }

        bool any = part == RangeParts.Exponential
            ? AddExponential<T>(parts, integral, hasCutOff, rows, ref sum)
            : AddRayleigh<T>(parts, part, integral, hasCutOff, rows, ref sum);
        if (any)
        {
            AddOfSmall<T>(parts, part, integral, hasCutOff, rows, ref sum);
        }
    }

    // Both return whether a row was left out, for its y is too small.
    [MethodImpl(MethodImplOptions.NoInlining)] // so that what it calls is inlined
    private static bool AddExponential<T>(RangeParts parts, PartIntegral integral, bool hasCutOff, int rows, ref float sum)
        where T : struct, IFloatLanes<T>
    {
        T leastPlain = T.Create(integral.LeastPlain);
        T left = T.Create(0);
        for (int row = 0; row < rows; row += T.Count)
        {
            T y = T.Load(in parts.Inverse(RangeParts.Exponential, row));
            T q = T.Load(in parts.Scale(RangeParts.Exponential, row));
            T complete = hasCutOff ? T.Load(in parts.UpperAtCut.At(row)) : T.Create(integral.Complete) * Power(q, integral.Slopes.Below);
            T damage = T.MultiplyAdd(VectorMath.Exp(T.Create(0) - y), q * Sum(integral.Difference.AsSpan(), q), complete);
            left = AddPlain(parts, RangeParts.Exponential, row, damage, y, leastPlain, left, ref sum);
        }

        return T.AnyNonzero(left);
    }

    [MethodImpl(MethodImplOptions.NoInlining)] // so that what it calls is inlined
    private static bool AddRayleigh<T>(RangeParts parts, int part, PartIntegral integral, bool hasCutOff, int rows, ref float sum)
        where T : struct, IFloatLanes<T>
    {
        T leastPlain = T.Create(integral.LeastPlain);
        T left = T.Create(0);
        T erfcAbove = T.Create(integral.ErfcAbove);
        T erfcBelow = T.Create(-integral.ErfcBelow);
        for (int row = 0; row < rows; row += T.Count)
        {
            T root = T.Load(in parts.Inverse(part, row));
            T y = root * root;
            T q = T.Load(in parts.Scale(part, row));
            T square = q * q;
            T above = Power(q, integral.Slopes.Above);
            T below = above * Power(q, integral.Slopes.Below - integral.Slopes.Above);
            T complete = hasCutOff ? T.Load(in parts.UpperAtCut.At(row)) : T.Create(integral.Complete) * below;
            T weights = T.MultiplyAdd(erfcBelow, below, erfcAbove * above);
            T bracket = T.MultiplyAdd(weights, VectorMath.ScaledErfcOfInverse(q), square * Sum(integral.Difference.AsSpan(), square));
            T damage = T.MultiplyAdd(VectorMath.Exp(T.Create(0) - y), bracket, complete);
            left = AddPlain(parts, part, row, damage, y, leastPlain, left, ref sum);
        }

        return T.AnyNonzero(left);
    }

    // A pass of its own: far more stress than the knee's is rare.
    [MethodImpl(MethodImplOptions.NoInlining)] // so that what it calls is inlined
    private static void AddOfSmall<T>(RangeParts parts, int part, PartIntegral integral, bool hasCutOff, int rows, ref float sum)
        where T : struct, IFloatLanes<T>
    {
        bool exponential = part == RangeParts.Exponential;
        T erfcAbove = T.Create(integral.ErfcAbove);
        for (int row = 0; row < rows; row += T.Count)
        {
            T root = T.Load(in parts.Inverse(part, row));
            T q = T.Load(in parts.Scale(part, row));
            T y = exponential ? root : root * root;
            T bracket = Sum(integral.Above.AsSpan(), exponential ? q : q * q) + y * Sum(integral.LowerSeries.AsSpan(), y);
            bracket = T.MultiplyAdd(erfcAbove * Power(q, integral.Slopes.Above), VectorMath.ScaledErfcOfInverse(q), bracket);
            T damage = VectorMath.Exp(T.Create(0) - y) * bracket;
            if (hasCutOff)
            {
                damage -= T.Load(in parts.LowerAtCut.At(row));
            }

            damage *= T.Load(in parts.Weight(part, row));
            ref float to = ref Unsafe.Add(ref sum, row);
            T.Store(T.Load(in to) + T.IfLess(y, T.Create(integral.LeastPlain), damage, T.Create(0)), ref to);
        }
    }

    // What stands in for the complete function where there is a cut-off c, q^m Gamma(1 + m/h, (c/q)^h), and q^m gamma(1 + m/h, (c/q)^h).
    [MethodImpl(MethodImplOptions.NoInlining)] // so that what it calls is inlined
    private static void FillCut<T>(RangeParts parts, int part, PartIntegral integral, ref float cutOff, int rows)
        where T : struct, IFloatLanes<T>
    {
        bool exponential = part == RangeParts.Exponential;
        T zero = T.Create(0);
        T erfcBelow = T.Create(integral.ErfcBelow);
        for (int row = 0; row < rows; row += T.Count)
        {
            T c = T.Load(in Unsafe.Add(ref cutOff, row));
            T q = T.Load(in parts.Scale(part, row));
            T ofCut = q / c;
            T root = T.Load(in parts.Inverse(part, row)) * c;
            T y = exponential ? root : root * root;
            T power = Power(c, integral.Slopes.Below) * VectorMath.Exp(zero - y);
            T bracket = T.MultiplyAdd(
                erfcBelow * Power(ofCut, integral.Slopes.Below), VectorMath.ScaledErfcOfInverse(ofCut),
                Sum(integral.Below.AsSpan(), exponential ? ofCut : ofCut * ofCut));
            T complete = T.Create(integral.Complete) * Power(q, integral.Slopes.Below);
            T.Store(T.IfLess(zero, c, power * bracket, complete), ref parts.UpperAtCut.At(row));
            T.Store(power * y * Sum(integral.LowerSeries.AsSpan(), y), ref parts.LowerAtCut.At(row));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T AddPlain<T>(RangeParts parts, int part, int row, T damage, T y, T leastPlain, T left, ref float sum)
        where T : struct, IFloatLanes<T>
    {
        T plain = T.IfLess(y, leastPlain, T.Create(0), damage);
        ref float to = ref Unsafe.Add(ref sum, row);
        T.Store(T.MultiplyAdd(plain, T.Load(in parts.Weight(part, row)), T.Load(in to)), ref to);
        return T.IfLess(y, leastPlain, T.Create(1), left);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Sum<T>(ReadOnlySpan<float> coefficients, T x)
        where T : struct, IFloatLanes<T>
    {
        T sum = T.Create(coefficients[^1]);
        for (int i = coefficients.Length - 2; i >= 0; i--)
        {
            sum = T.MultiplyAdd(sum, x, T.Create(coefficients[i]));
        }

        return sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Power<T>(T x, int n)
        where T : struct, IFloatLanes<T>
    {
        T power = x;
        for (int i = 1; i < n; i++)
        {
            power *= x;
        }

        return power;
    }
}
