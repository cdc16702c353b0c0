namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// Dirlik's density (1985) of rainflow ranges, Z = S / (2 sqrt(M0)):
/// <c>D1/Q e^(-Z/Q) + D2 Z/R^2 e^(-Z^2/2R^2) + D3 Z e^(-Z^2/2)</c>, at the rate of the peaks.
/// </summary>
/// <param name="D1">Weight of the exponential part.</param>
/// <param name="D2">Weight of the Rayleigh part of scale R.</param>
/// <param name="D3">Weight of the Rayleigh part of scale 1.</param>
/// <param name="Q">Scale of the exponential part.</param>
/// <param name="R">Scale of the first Rayleigh part.</param>
internal readonly record struct Dirlik(double D1, double D2, double D3, double Q, double R)
{
    /// <summary>The constants of a spectrum that is not narrow band.</summary>
    public static Dirlik From(in SpectralMoments moments)
    {
        double a2 = moments.Alpha2;
        double xm = moments.Alpha1 * a2;
        double d1 = 2 * (xm - a2 * a2) / (1 + a2 * a2);
        double rest = 1 - a2 - d1 + d1 * d1;
        double r = (a2 - xm - d1 * d1) / rest;
        double d2 = rest / (1 - r);
        double d3 = 1 - d1 - d2;
        return new(d1, d2, d3, 1.25 * (a2 - d3 - d2 * r) / d1, r);
    }

    /// <summary>Damage per second; <paramref name="stressScale"/> is MPa per unit of the moments' signal.</summary>
    public static double DamagePerSecond(in SpectralMoments moments, double stressScale, SnConstants curve)
    {
        if (NarrowBand.IsLimitOf(moments))
        {
            return NarrowBand.DamagePerSecond(moments, stressScale, curve);
        }

        Dirlik d = From(moments);
        // No spectrum of the road is known to come here; a spectrum of two lines may leave Q without a digit.
        if (!(d.Q >= 0 && double.IsFinite(d.Q) && double.IsFinite(d.D2)))
        {
            return NarrowBand.DamagePerSecond(moments, stressScale, curve);
        }

        double sigma = stressScale * moments.Rms;
        return moments.PeaksPerSecond * (
            d.D1 * WeibullRanges.DamagePerCycle(2 * sigma * d.Q, 1, curve)
            + d.D2 * Rayleigh.DamagePerCycle(sigma * Math.Abs(d.R), curve)
            + d.D3 * Rayleigh.DamagePerCycle(sigma, curve));
    }
}
