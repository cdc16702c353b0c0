namespace AxleRisk.Core.Damage.Rides;

/// <summary>
/// What the two-mass ride makes of road height at one frequency: section force, suspension travel and how far they go together.
/// </summary>
/// <param name="ForceSquared">Squared gain of the section force, N^2/m^2, as <see cref="Ride.ForceGainSquared"/>.</param>
/// <param name="TravelSquared">Squared gain of the suspension's compression zu - zs, m^2/m^2.</param>
/// <param name="InPhase">The real part of force gain times conjugate travel gain, N m/m^2: the part of the two that is in phase.</param>
internal readonly record struct RideGains(double ForceSquared, double TravelSquared, double InPhase)
{
    /// <summary>The gains at a frequency.</summary>
    /// <param name="p">The ride.</param>
    /// <param name="f">Frequency, Hz.</param>
    public static RideGains At(in RideParameters p, double f)
    {
        // With K = ks + i w cs, T = kt + i w ct and the determinant of Ride:
        // F/zr = T x (ms mu (1 - phi) x - K M)/det, (zu - zs)/zr = -T ms x/det.
        (double ms, double mu, double ks, double cs, double kt, double ct, double phi) = p;
        double w = 2 * Math.PI * f;
        double x = w * w;
        double inner = ms + mu - phi * mu;
        double inertia = ms * mu * (1 - phi) * x - ks * inner;
        double real = ks * kt - x * (ks * mu + ms * (ks + kt) + cs * ct) + ms * mu * x * x;
        double imaginary = cs * kt + ct * ks - x * (cs * mu + (cs + ct) * ms);
        double common = x * x * (kt * kt + ct * ct * x) / (real * real + x * imaginary * imaginary);
        return new(common * (inertia * inertia + cs * cs * inner * inner * x), common * ms * ms, -common * ms * inertia);
    }
}
