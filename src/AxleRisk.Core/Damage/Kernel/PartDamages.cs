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
        if (part == RangeParts.Exponential)
            AddExponential<T>(parts, part, slopes, ref cutOff, hasCutOff, rows, ref sum);
        else
            AddRayleigh<T>(parts, part, slopes, ref cutOff, hasCutOff, rows, ref sum);
    }

    private static void AddExponential<T>(
        RangeParts parts, int part, SlopePair slopes, ref double cutOff, bool hasCutOff, int rows, ref double sum)
        where T : struct, IDoubleLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            T y = T.Load(in parts.Inverse(part, row));
            PartialGammas<T> gamma = StartExponential(y);
            gamma.RaiseBy(slopes.Above, y);
            T above = gamma.Upper;
            gamma.RaiseBy(slopes.Below - slopes.Above, y);
            T below;
            if (hasCutOff)
            {
                T cut = y * T.Load(in Unsafe.Add(ref cutOff, row));
                PartialGammas<T> atCut = StartExponential(cut);
                atCut.RaiseBy(slopes.Below, cut);
                below = Between(gamma, y, atCut.Upper, atCut.LowerOfSmall(cut));
            }
            else
            {
                below = Between(gamma, y, T.Create(slopes.ExponentialBelow), T.Create(0));
            }

            AddPowers(parts, part, row, slopes, above, below, ref sum);
        }
    }

    private static void AddRayleigh<T>(
        RangeParts parts, int part, SlopePair slopes, ref double cutOff, bool hasCutOff, int rows, ref double sum)
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
            T below;
            if (hasCutOff)
            {
                T rootCut = root * T.Load(in Unsafe.Add(ref cutOff, row));
                T cut = rootCut * rootCut;
                PartialGammas<T> atCut = StartRayleigh(slopes.Below, rootCut, cut);
                atCut.RaiseBy(raiseBelow, cut);
                below = Between(gamma, y, atCut.Upper, atCut.LowerOfSmall(cut));
            }
            else
            {
                below = Between(gamma, y, T.Create(slopes.RayleighBelow), T.Create(0));
            }

            AddPowers(parts, part, row, slopes, above, below, ref sum);
        }
    }

    // The part between cut-off and knee: a difference of upper functions, or where their difference has no digits left (far more stress
    // than the knee's) of lower ones.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Between<T>(PartialGammas<T> atKnee, T y, T upperAtCut, T lowerAtCut)
        where T : struct, IDoubleLanes<T> =>
        T.IfLess(y, T.Create(Small), atKnee.LowerOfSmall(y) - lowerAtCut, upperAtCut - atKnee.Upper);

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
