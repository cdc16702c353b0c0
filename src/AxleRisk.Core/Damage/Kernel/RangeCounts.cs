using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>
/// The counting methods, several rows at a time: damage per second in units of that of a cycle at the knee, from moments in units of the
/// squared knee over eight, so that the root of the zeroth is the Rayleigh scale of the ranges over the knee. NaN in lanes that only the
/// scalar code serves: a spectrum too narrow for single precision, no signal, no stress.
/// </summary>
/// <typeparam name="T">The lanes.</typeparam>
internal readonly struct RangeCounts<T>
    where T : struct, IDoubleLanes<T>
{
    // The scalar limit is 1e-6 (NarrowBand.Threshold); moments of single precision lose their digits sooner.
    private const double NarrowBandLimit = 1e-3;

    private readonly T m0;
    private readonly T m1;
    private readonly T m2;
    private readonly T m4;

    /// <summary>Takes the moments.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public RangeCounts(T m0, T m1, T m2, T m4)
    {
        this.m0 = m0;
        this.m1 = m1;
        this.m2 = m2;
        this.m4 = m4;
    }

    /// <summary><see cref="Dirlik"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Dirlik(T cutOff, bool hasCutOff, SlopePair slopes)
    {
        (T scale, T inverse, T peaks, T a1, T a2) = Summary();
        T one = T.Create(1);
        T xm = a1 * a2;
        T square = a2 * a2;
        T d1 = T.Create(2) * (xm - square) / (one + square);
        T rest = one - a2 - d1 + d1 * d1;
        T top = a2 - xm - d1 * d1; // r = top / rest
        T gap = rest - top; // 1 - r = gap / rest
        T common = one / (rest * gap);
        T r = top * gap * common;
        T d2 = rest * rest * rest * common;
        T d3 = one - d1 - d2;
        T q = T.Create(1.25) * (a2 - d3 - d2 * r) / d1;
        T exponential = T.Create(0.70710678118654752440) * q; // 2 sigma Q over 2 sqrt(2) sigma
        T size = T.Abs(r);
        T sum = d1 * PartialRanges.Exponential(exponential * scale, inverse / exponential, cutOff, hasCutOff, slopes);
        sum = T.MultiplyAdd(d2, PartialRanges.Rayleigh(size * scale, inverse / size, cutOff, hasCutOff, slopes), sum);
        sum = T.MultiplyAdd(d3, PartialRanges.Rayleigh(scale, inverse, cutOff, hasCutOff, slopes), sum);
        return ServedOnly(T.IfLess(T.Create(0), q, peaks * sum, T.Create(double.NaN)), a2);
    }

    /// <summary><see cref="Damage.NarrowBand"/>.</summary>
    public T NarrowBand(T cutOff, bool hasCutOff, SlopePair slopes)
    {
        (T scale, T inverse, T peaks, T _, T a2) = Summary();
        return ServedOnly(peaks * a2 * PartialRanges.Rayleigh(scale, inverse, cutOff, hasCutOff, slopes), a2);
    }

    /// <summary><see cref="Damage.TovoBenasciutti"/>.</summary>
    public T TovoBenasciutti(T cutOff, bool hasCutOff, SlopePair slopes)
    {
        (T scale, T inverse, T peaks, T a1, T a2) = Summary();
        T zero = T.Create(0);
        T one = T.Create(1);
        T difference = a1 - a2;
        T exponential = T.Create(1.112) * (one + a1 * a2 - (a1 + a2)) * VectorMath.Exp(T.Create(2.11) * a2);
        T b = difference * (exponential + difference) / ((a2 - one) * (a2 - one));
        b = T.IfLess(b, zero, zero, T.IfLess(one, b, one, b));
        T upper = a2 * PartialRanges.Rayleigh(scale, inverse, cutOff, hasCutOff, slopes);
        T lower = PartialRanges.Rayleigh(a2 * scale, inverse / a2, cutOff, hasCutOff, slopes);
        return ServedOnly(peaks * (b * upper + (one - b) * lower), a2);
    }

    // Scale and its inverse, rate of peaks and the bandwidth parameters of SpectralMoments, with a single division.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private (T Scale, T Inverse, T Peaks, T Alpha1, T Alpha2) Summary()
    {
        T s0 = T.Sqrt(m0);
        T s2 = T.Sqrt(m2);
        T s4 = T.Sqrt(m4);
        T inverse024 = T.Create(1) / (s0 * s2 * s4);
        T inverse0 = inverse024 * s2 * s4;
        T inverse2 = inverse024 * s0 * s4;
        return (s0, inverse0, s4 * inverse2, m1 * inverse0 * inverse2, m2 * inverse024 * s2);
    }

    private static T ServedOnly(T damage, T a2) =>
        T.IfLess(a2, T.Create(1 - NarrowBandLimit), damage, T.Create(double.NaN));
}
