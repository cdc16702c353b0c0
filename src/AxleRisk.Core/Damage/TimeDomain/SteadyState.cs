using System.Numerics;
using AxleRisk.Core.Damage.Rides;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// The linear ride's answer to a sinusoid. With it a record starts where its own period ends: nothing has to die away first.
/// </summary>
internal static class SteadyState
{
    /// <summary>The state (zs, zs', zu, zu') per newton of a sinusoidal tyre input <c>u exp(i w t)</c>.</summary>
    /// <param name="p">The ride.</param>
    /// <param name="f">Frequency, Hz.</param>
    /// <param name="gain">Takes four gains.</param>
    public static void Gain(in RideParameters p, double f, Span<Complex> gain)
    {
        var iw = new Complex(0, 2 * Math.PI * f);
        double square = -(iw * iw).Real;
        Complex strut = p.SpringNPerM + iw * p.DamperNsPerM;
        Complex tyre = p.TyreNPerM + iw * p.TyreDampingNsPerM;
        Complex body = strut - p.SprungKg * square;
        Complex determinant = body * (strut + tyre - p.UnsprungKg * square) - strut * strut;
        gain[0] = strut / determinant;
        gain[2] = body / determinant;
        gain[1] = iw * gain[0];
        gain[3] = iw * gain[2];
    }
}
