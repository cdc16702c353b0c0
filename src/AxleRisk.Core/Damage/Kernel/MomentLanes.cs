using System.Runtime.CompilerServices;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// <see cref="SpectralMoments"/> of several rows, of the stress in units of its range at the knee over 2 sqrt(2): so the root of the zeroth
/// moment is the scale of the Rayleigh ranges over the knee.
/// </summary>
/// <typeparam name="T">The lanes.</typeparam>
/// <param name="Scale">That root.</param>
/// <param name="Inverse">One over it.</param>
/// <param name="Peaks">Rate of peaks.</param>
/// <param name="Alpha1">M1 / sqrt(M0 M2).</param>
/// <param name="Alpha2">M2 / sqrt(M0 M4).</param>
internal readonly record struct MomentLanes<T>(T Scale, T Inverse, T Peaks, T Alpha1, T Alpha2)
    where T : struct, IFloatLanes<T>
{
    // The scalar limit is 1e-6 (NarrowBand.Threshold); sums of single precision lose their digits sooner.
    private const float NarrowBandLimit = 1e-3f;

    /// <summary>From the four columns of sums and the root of the scale that makes moments of them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static MomentLanes<T> From(ref float sums, int stride, T scaleRoot)
    {
        T m1 = T.Load(in Unsafe.Add(ref sums, stride));
        T m2 = T.Load(in Unsafe.Add(ref sums, 2 * stride));
        T s0 = T.Sqrt(T.Load(in sums));
        T s2 = T.Sqrt(m2);
        T s4 = T.Sqrt(T.Load(in Unsafe.Add(ref sums, 3 * stride)));
        T scale = s0 * scaleRoot;
        T s24 = s2 * s4;
        T inverse = T.Create(1) / (scale * s24); // one division for all
        T inverse0 = inverse * s24 * scaleRoot;
        T inverse2 = inverse * scale * s4;
        return new(scale, inverse * s24, s4 * inverse2, m1 * inverse0 * inverse2, m2 * inverse * scaleRoot * s2);
    }

    /// <summary>
    /// The rate of peaks; NaN in lanes that only the scalar code serves: a spectrum too narrow for single precision, no signal, no stress.
    /// </summary>
    public T ServedPeaks
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => T.IfLess(Alpha2, T.Create(1 - NarrowBandLimit), Peaks, T.Create(float.NaN));
    }
}
