using System.Numerics;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Roads;
using AxleRisk.Core.Damage.TimeDomain;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>The travel of the suspension and its part in phase with the force.</summary>
public class RideGainsTests
{
    private static readonly RideParameters Car = new(750, 140, 45e3, 3800, 420e3, 0, 0);

    // Exact variances of the two-mass ride on white road velocity (Lyapunov equation, closed form), class C at 20 m/s: travel
    // D M/(2c) = 1.1835214035e-4 m^2, its rate D kt/(2c) = 5.5851571853e-2 m^2/s^2.
    [Fact]
    public void The_travel_has_the_closed_form_variances()
    {
        double Travel(int power) => Quadrature.OverLog(
            f => Math.Pow(2 * Math.PI * f, power) * RideGains.At(Car, f).TravelSquared * Road.Psd(f / 20, 256e-6, 2) / 20, 1e-7, 1e11,
                7201);
        Near.Relative(1.1835214035e-4, Travel(0), 1e-8);
        Near.Relative(5.5851571853e-2, Travel(2), 1e-8);
    }

    [Theory]
    [InlineData(0.7)]
    [InlineData(1.3)]
    [InlineData(9.5)]
    [InlineData(31)]
    public void The_gains_are_those_of_the_complex_equations(double f)
    {
        RideParameters p = Car with { TyreDampingNsPerM = 150, OutboardShare = 0.4 };
        Span<Complex> state = new Complex[RideMatrix.States];
        SteadyState.Gain(p, f, state);
        var tyre = new Complex(p.TyreNPerM, 2 * Math.PI * f * p.TyreDampingNsPerM);
        double x = 4 * Math.PI * Math.PI * f * f;
        Complex axle = state[2] * tyre;
        Complex travel = axle - state[0] * tyre;
        Complex force = tyre * (1 - axle) + p.OutboardShare * p.UnsprungKg * x * axle;
        RideGains gains = RideGains.At(p, f);
        Near.Relative(force.Magnitude * force.Magnitude, gains.ForceSquared, 1e-9);
        Near.Relative(Ride.ForceGainSquared(p, f), gains.ForceSquared, 1e-12);
        Near.Relative(travel.Magnitude * travel.Magnitude, gains.TravelSquared, 1e-9);
        Near.Relative((force * Complex.Conjugate(travel)).Real, gains.InPhase, 1e-9);
    }
}
