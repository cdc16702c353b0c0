namespace AxleRisk.Core.Damage.Rides;

/// <summary>
/// The linear two-mass ride: <c>ms zs'' = -ks (zs - zu) - cs (zs' - zu')</c>,
/// <c>mu zu'' = ks (zs - zu) + cs (zs' - zu') + kt (zr - zu) + ct (zr' - zu')</c>.
/// </summary>
internal static class Ride
{
    /// <summary>
    /// Squared gain |F/zr|^2, N^2/m^2, from road height to the force through the section about its static value,
    /// <c>F = kt (zr - zu) + ct (zr' - zu') - phi mu zu''</c>. Rational in the squared angular frequency, so no complex numbers.
    /// </summary>
    /// <param name="p">The ride.</param>
    /// <param name="f">Frequency, Hz.</param>
    public static double ForceGainSquared(in RideParameters p, double f)
    {
        (double ms, double mu, double ks, double cs, double kt, double ct, double phi) = p;
        double w = 2 * Math.PI * f;
        double x = w * w;
        double inner = ms + mu - phi * mu;
        double inertia = ms * mu * (1 - phi) * x - ks * inner;
        double numerator = x * x * (kt * kt + ct * ct * x) * (inertia * inertia + cs * cs * inner * inner * x);
        double real = ks * kt - x * (ks * mu + ms * (ks + kt) + cs * ct) + ms * mu * x * x;
        double imaginary = cs * kt + ct * ks - x * (cs * mu + (cs + ct) * ms);
        return numerator / (real * real + x * imaginary * imaginary);
    }

    /// <summary>Undamped body-bounce frequency, Hz: the lower eigenfrequency.</summary>
    public static double BodyBounceHz(in RideParameters p) => Eigenfrequencies(p).Lower;

    /// <summary>Undamped wheel-hop frequency, Hz: the upper eigenfrequency.</summary>
    public static double WheelHopHz(in RideParameters p) => Eigenfrequencies(p).Upper;

    // The roots x = (2 pi f)^2 of ms mu x^2 - [ks mu + ms (ks + kt)] x + ks kt = 0. The lower one is taken from the product of the
    // two, which loses no digits where they lie far apart.
    private static (double Lower, double Upper) Eigenfrequencies(in RideParameters p)
    {
        double a = p.SprungKg * p.UnsprungKg;
        double b = p.SpringNPerM * p.UnsprungKg + p.SprungKg * (p.SpringNPerM + p.TyreNPerM);
        double c = p.SpringNPerM * p.TyreNPerM;
        double upper = (b + Math.Sqrt(b * b - 4 * a * c)) / (2 * a);
        return (Math.Sqrt(c / (a * upper)) / (2 * Math.PI), Math.Sqrt(upper) / (2 * Math.PI));
    }
}
