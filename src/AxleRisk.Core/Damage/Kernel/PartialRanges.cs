using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>
/// <see cref="WeibullRanges"/> of shapes 1 and 2 over a curve of whole slopes, several rows at a time: mean damage per cycle in units of that
/// of a cycle at the knee, <c>q^m1 Gamma(1 + m1/h, y) + q^m2 [gamma(1 + m2/h, y) - gamma(1 + m2/h, y cut)]</c>, q the scale over the knee.
/// </summary>
internal static class PartialRanges
{
    private const double SqrtPi = 1.7724538509055160273;

    /// <summary>The exponential density.</summary>
    /// <param name="scale">Scale q over the knee.</param>
    /// <param name="inverse">1/q.</param>
    /// <param name="cutOff">Cut-off over knee; used if <paramref name="hasCutOff"/>.</param>
    /// <param name="hasCutOff">Whether any curve has a cut-off.</param>
    /// <param name="slopes">The slopes.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Exponential<T>(T scale, T inverse, T cutOff, bool hasCutOff, SlopePair slopes)
        where T : struct, IDoubleLanes<T>
    {
        var knee = PartialGammas<T>.Exponential(inverse);
        knee.RaiseBy(slopes.Above, inverse);
        T above = knee.Upper;
        knee.RaiseBy(slopes.Below - slopes.Above, inverse);
        T below = knee.Lower(slopes.ExponentialBelow, inverse);
        if (hasCutOff)
        {
            T y = inverse * cutOff;
            var cut = PartialGammas<T>.Exponential(y);
            cut.RaiseBy(slopes.Below, y);
            below -= cut.Lower(slopes.ExponentialBelow, y);
        }

        return Powers(scale, slopes, above, below);
    }

    /// <summary>The Rayleigh density; parameters as of <see cref="Exponential"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Rayleigh<T>(T scale, T inverse, T cutOff, bool hasCutOff, SlopePair slopes)
        where T : struct, IDoubleLanes<T>
    {
        T y = inverse * inverse;
        T exp = VectorMath.Exp(T.Create(0) - y);
        PartialGammas<T> knee = StartRayleigh(slopes.Above, inverse, y, exp);
        knee.RaiseBy((slopes.Above + 1) / 2, y);
        T above = knee.Upper;
        bool sameParity = ((slopes.Above ^ slopes.Below) & 1) == 0;
        if (!sameParity)
            knee = StartRayleigh(slopes.Below, inverse, y, exp);
        knee.RaiseBy((slopes.Below + 1) / 2 - (sameParity ? (slopes.Above + 1) / 2 : 0), y);
        T below = knee.Lower(slopes.RayleighBelow, y);
        if (hasCutOff)
            below -= RayleighBelowCutOff(inverse * cutOff, slopes);
        return Powers(scale, slopes, above, below);
    }

    private static T RayleighBelowCutOff<T>(T inverse, SlopePair slopes)
        where T : struct, IDoubleLanes<T>
    {
        T y = inverse * inverse;
        PartialGammas<T> cut = StartRayleigh(slopes.Below, inverse, y, VectorMath.Exp(T.Create(0) - y));
        cut.RaiseBy((slopes.Below + 1) / 2, y);
        return cut.Lower(slopes.RayleighBelow, y);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static PartialGammas<T> StartRayleigh<T>(int slope, T root, T y, T exp)
        where T : struct, IDoubleLanes<T> => (slope & 1) == 0
            ? new(1, exp, y * exp)
            : new(0.5, T.Create(SqrtPi) * exp * VectorMath.ScaledErfc(root), root * exp);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Powers<T>(T scale, SlopePair slopes, T above, T below)
        where T : struct, IDoubleLanes<T>
    {
        T sum = above;
        T rise = below;
        for (int i = slopes.Above; i < slopes.Below; i++)
            rise *= scale;
        sum += rise;
        for (int i = 0; i < slopes.Above; i++)
            sum *= scale;
        return sum;
    }
}
