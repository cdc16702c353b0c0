using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>
/// <see cref="WeibullRanges"/> of shapes 1 and 2 over curves of whole slopes, several rows at a time: a part's damage per second in units of
/// that of a cycle at the knee, its weight times <c>q^m1 Gamma(1 + m1/h, y) + q^m2 [gamma(1 + m2/h, y) - gamma(1 + m2/h, y cut)]</c>, q its
/// scale over the knee, y = q^-h.
/// </summary>
internal static class PartDamages
{
    private const double SqrtPi = 1.7724538509055160273;
    private const double Small = 0.01;

    /// <summary>Adds a part to <paramref name="sum"/>.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="part">Which.</param>
    /// <param name="slopes">The slopes of the curve.</param>
    /// <param name="cutOff">Cut-off over knee, by row; used if <paramref name="hasCutOff"/>.</param>
    /// <param name="hasCutOff">Whether any row's curve has a cut-off.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="sum">The damage so far.</param>
    public static void Add<T>(
        RangeParts parts, int part, SlopePair slopes, ref double cutOff, bool hasCutOff, int rows, ref double sum)
        where T : struct, IDoubleLanes<T>
    {
        bool exponential = part == RangeParts.Exponential;
        if (hasCutOff)
        {
            FillCut<T>(parts, part, slopes, ref cutOff, rows);
        }
        else
        {
            parts.UpperAtCut.Span.Fill(exponential ? slopes.ExponentialBelow : slopes.RayleighBelow);
            parts.LowerAtCut.Span.Clear();
        }

        if (exponential)
            AddExponential<T>(parts, part, slopes, rows, ref sum);
        else
            AddRayleigh<T>(parts, part, slopes, rows, ref sum);
    }

    [MethodImpl(MethodImplOptions.NoInlining)] // so that what it calls is
    private static void AddExponential<T>(RangeParts parts, int part, SlopePair slopes, int rows, ref double sum)
        where T : struct, IDoubleLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            T y = T.Load(in parts.Inverse(part, row));
            PartialGammas<T> gamma = StartExponential(y);
            gamma.RaiseBy(slopes.Above, y);
            T above = gamma.Upper;
            gamma.RaiseBy(slopes.Below - slopes.Above, y);
            AddPowers(parts, part, row, slopes, above, Between(parts, row, gamma, y), ref sum);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)] // so that what it calls is
    private static void AddRayleigh<T>(RangeParts parts, int part, SlopePair slopes, int rows, ref double sum)
        where T : struct, IDoubleLanes<T>
    {
        bool sameParity = ((slopes.Above ^ slopes.Below) & 1) == 0;
        int raiseAbove = (slopes.Above + 1) / 2;
        int raiseBelow = (slopes.Below + 1) / 2;
        for (int row = 0; row < rows; row += T.Count)
        {
            T root = T.Load(in parts.Inverse(part, row));
            T y = root * root;
            PartialGammas<T> gamma = StartRayleigh(slopes.Above, root, y);
            gamma.RaiseBy(raiseAbove, y);
            T above = gamma.Upper;
            if (!sameParity)
                gamma = StartRayleigh(slopes.Below, root, y);
            gamma.RaiseBy(sameParity ? raiseBelow - raiseAbove : raiseBelow, y);
            AddPowers(parts, part, row, slopes, above, Between(parts, row, gamma, y), ref sum);
        }
    }

    // A pass of its own: most curves have no cut-off, and the compiler inlines only so much into one loop.
    [MethodImpl(MethodImplOptions.NoInlining)] // so that what it calls is
    private static void FillCut<T>(RangeParts parts, int part, SlopePair slopes, ref double cutOff, int rows)
        where T : struct, IDoubleLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            T root = T.Load(in parts.Inverse(part, row)) * T.Load(in Unsafe.Add(ref cutOff, row));
            T y = part == RangeParts.Exponential ? root : root * root;
            PartialGammas<T> gamma = part == RangeParts.Exponential ? StartExponential(y) : StartRayleigh(slopes.Below, root, y);
            gamma.RaiseBy(part == RangeParts.Exponential ? slopes.Below : (slopes.Below + 1) / 2, y);
            T.Store(gamma.Upper, ref parts.UpperAtCut.At(row));
            T.Store(gamma.LowerOfSmall(y), ref parts.LowerAtCut.At(row));
        }
    }

    // The part between cut-off and knee: a difference of upper functions, or where their difference has no digits left (far more stress
    // than the knee's) of lower ones.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Between<T>(RangeParts parts, int row, PartialGammas<T> atKnee, T y)
        where T : struct, IDoubleLanes<T> => T.IfLess(
            y, T.Create(Small),
            atKnee.LowerOfSmall(y) - T.Load(in parts.LowerAtCut.At(row)), T.Load(in parts.UpperAtCut.At(row)) - atKnee.Upper);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static PartialGammas<T> StartExponential<T>(T y)
        where T : struct, IDoubleLanes<T>
    {
        T exp = VectorMath.Exp(T.Create(0) - y);
        return new(1, exp, y * exp);
    }

    // Even slopes rise from a = 1, odd ones from a = 1/2.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static PartialGammas<T> StartRayleigh<T>(int slope, T root, T y)
        where T : struct, IDoubleLanes<T>
    {
        T exp = VectorMath.Exp(T.Create(0) - y);
        return (slope & 1) == 0 ? new(1, exp, y * exp) : new(0.5, T.Create(SqrtPi) * exp * VectorMath.ScaledErfc(root), root * exp);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void AddPowers<T>(RangeParts parts, int part, int row, SlopePair slopes, T above, T below, ref double sum)
        where T : struct, IDoubleLanes<T>
    {
        T scale = T.Load(in parts.Scale(part, row));
        for (int i = slopes.Above; i < slopes.Below; i++)
            below *= scale;
        T both = above + below;
        for (int i = 0; i < slopes.Above; i++)
            both *= scale;
        ref double to = ref Unsafe.Add(ref sum, row);
        T.Store(T.MultiplyAdd(both, T.Load(in parts.Weight(part, row)), T.Load(in to)), ref to);
    }
}
