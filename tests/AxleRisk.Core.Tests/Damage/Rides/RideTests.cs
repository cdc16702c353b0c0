using System.Numerics;
using AxleRisk.Core.Damage.Rides;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class RideTests
{
    // The reference car of the roughness index (World Bank Technical Paper 46, list from memory); modes recomputed, 9 digits.
    [Fact]
    public void The_golden_car_has_its_two_undamped_modes()
    {
        var p = new RideParameters(1, 0.15, 63.3, 6, 653, 0, 0.5);
        Near.Relative(1.20829723, Ride.BodyBounceHz(p), 1e-8);
        Near.Relative(11.00472771, Ride.WheelHopHz(p), 1e-8);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.4)]
    [InlineData(1)]
    public void The_rational_gain_is_that_of_the_equations_of_motion(double outboardShare)
    {
        var p = new RideParameters(572, 96, 45.8e3, 2340, 302e3, 180, outboardShare);
        for (double f = 0.25; f < 51; f *= 1.3)
        {
            Near.Relative(GainFromMotion(p, f), Ride.ForceGainSquared(p, f), 1e-11);
        }
    }

    [Fact]
    public void Undamped_the_gain_is_infinite_at_both_modes()
    {
        var p = new RideParameters(572, 96, 45.8e3, 0, 302e3, 0, 0.4);
        Assert.True(Ride.ForceGainSquared(p, Ride.BodyBounceHz(p)) > 1e20);
        Assert.True(Ride.ForceGainSquared(p, Ride.WheelHopHz(p)) > 1e20);
    }

    // Solves the two equations of motion for a road of unit height.
    private static double GainFromMotion(in RideParameters p, double f)
    {
        var s = new Complex(0, 2 * Math.PI * f);
        Complex suspension = p.SpringNPerM + p.DamperNsPerM * s;
        Complex tyre = p.TyreNPerM + p.TyreDampingNsPerM * s;
        Complex sprung = p.SprungKg * s * s + suspension;
        Complex unsprung = p.UnsprungKg * s * s + suspension + tyre;
        Complex wheel = tyre * sprung / (sprung * unsprung - suspension * suspension);
        Complex force = tyre * (1 - wheel) - p.OutboardShare * p.UnsprungKg * s * s * wheel;
        return force.Magnitude * force.Magnitude;
    }
}
