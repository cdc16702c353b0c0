using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Roads;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// Exact variances of the two-mass ride on a road of white velocity, from the Lyapunov equation (closed form, 11 digits). Without tyre
/// damping the checked force is the tyre's for no outboard mass, and the suspension's (sprung mass times its acceleration) for all of it.
/// </summary>
public class RideVarianceTests
{
    // Tail beyond the upper limit: below 1e-9 of the tyre force. Trapezoid in ln f: 400 points a decade and poles well off the axis.
    private const double Tolerance = 1e-8;

    private static readonly RideParameters Car = new(750, 140, 45e3, 3800, 420e3, 0, 0);
    private static readonly RideParameters GoldenCar = new(1, 0.15, 63.3, 6, 653, 0, 0);

    [Fact]
    public void The_tyre_force_has_the_closed_form_variance_on_class_C_at_20_m_per_s()
    {
        double deflection = Variance(Car, 256e-6, 20) / (420e3 * 420e3);
        Near.Relative(2.2234459633e-5, deflection, Tolerance);
        Near.Relative(1980.4441, Math.Sqrt(Variance(Car, 256e-6, 20)), 1e-7);
    }

    [Fact]
    public void The_body_acceleration_has_the_closed_form_variance_on_class_C_at_20_m_per_s() =>
        Near.Relative(1.8598396120, Variance(Car with { OutboardShare = 1 }, 256e-6, 20) / (750 * 750.0), Tolerance);

    [Fact]
    public void The_golden_car_has_the_closed_form_variances_on_class_B_at_80_km_per_h()
    {
        Near.Relative(4.7668335908e-6, Variance(GoldenCar, 64e-6, 80 / 3.6) / (653 * 653.0), Tolerance);
        Near.Relative(0.65776128549, Variance(GoldenCar with { OutboardShare = 1 }, 64e-6, 80 / 3.6), Tolerance);
    }

    private static double Variance(RideParameters p, double gd0, double speed) =>
        Quadrature.OverLog(f => Ride.ForceGainSquared(p, f) * Road.Psd(f / speed, gd0, 2) / speed, 1e-7, 1e11, 7201);
}
