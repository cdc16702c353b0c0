using AxleRisk.Core.Damage.Rides;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// The simulation against motions known in closed form (elementary mechanics): one mass on springs that are linear by pieces. A body of
/// 1e15 kg stands still, so that the axle moves alone.
/// </summary>
public class OscillatorTests
{
    private const double Seconds = 1.0 / 1024;
    private static readonly RideParameters Axle = new(1e15, 90, 45e3, 0, 300e3, 0, 0);

    [Fact]
    public void A_damped_oscillator_decays_as_the_closed_form_does()
    {
        RideParameters damped = Axle with { DamperNsPerM = 4000, TyreDampingNsPerM = 200 };
        double natural = Math.Sqrt(345e3 / 90);
        double ratio = 4200 / (2 * 90 * natural);
        double frequency = natural * Math.Sqrt(1 - ratio * ratio);
        double[] travel = Travel(damped, RideLimits.None, 0.02, 300);
        for (int i = 0; i < travel.Length; i++)
        {
            double t = i * Seconds;
            double exact = 0.02 * Math.Exp(-ratio * natural * t)
                * (Math.Cos(frequency * t) + ratio * natural / frequency * Math.Sin(frequency * t));
            // The linear step is exact: rounding alone.
            Assert.Equal(exact, travel[i], 1e-13);
        }
    }

    [Fact]
    public void A_mass_that_meets_a_stop_swings_in_the_closed_form_s_period()
    {
        const double stop = 700e3, clearance = 0.01, start = 0.03;
        double free = Math.Sqrt(345e3 / 90), stopped = Math.Sqrt((345e3 + stop) / 90);
        double speed = free * Math.Sqrt(start * start - clearance * clearance);
        double middle = clearance * 345e3 / (345e3 + stop);
        double period = (Math.PI + 2 * Math.Asin(clearance / start)) / free
            + 2 / stopped * Math.Acos(middle / Math.Sqrt(middle * middle + speed * speed / (stopped * stopped)));
        var limits = new RideLimits { BumpClearanceM = clearance, BumpStopNPerM = stop };
        // Second order in the step, which is a tenth of a radian long: (0.1)^2 / 12.
        AssertPeriod(period, Axle, limits, 1e-3);
    }

    [Fact]
    public void A_wheel_that_leaves_the_ground_flies_as_long_as_the_closed_form_says()
    {
        // No suspension spring: only the tyre, and from where it stops pulling a constant force.
        RideParameters wheel = Axle with { SpringNPerM = 0 };
        const double weight = 3000, start = 0.03;
        double natural = Math.Sqrt(300e3 / 90), leaves = weight / 300e3;
        double speed = natural * Math.Sqrt(start * start - leaves * leaves);
        double period = (Math.PI + 2 * Math.Asin(leaves / start)) / natural + 2 * speed / (weight / 90);
        AssertPeriod(period, wheel, new RideLimits { StaticTyreForceN = weight, LiftsOff = true }, 1e-3);
    }

    [Fact]
    public void A_damper_of_two_rates_brakes_each_way_by_its_own()
    {
        RideParameters damped = Axle with { DamperNsPerM = 2000 };
        var limits = new RideLimits { BumpDamping = 0.5, ReboundDamping = 1.5 };
        // Released in extension the first half swing is compression: it ends at exp(-pi zeta / sqrt(1 - zeta^2)) of the start.
        double[] travel = Travel(damped, limits, -0.02, 400);
        double peak = travel.Max();
        double valley = travel[Array.IndexOf(travel, peak)..].Min();
        Near.Relative(0.02 * HalfSwing(1000), peak, 2e-3);
        Near.Relative(-peak * HalfSwing(3000), valley, 2e-3);
    }

    private static double HalfSwing(double damper)
    {
        double ratio = damper / (2 * Math.Sqrt(345e3 * 90));
        return Math.Exp(-Math.PI * ratio / Math.Sqrt(1 - ratio * ratio));
    }

    private static void AssertPeriod(double period, in RideParameters ride, RideLimits limits, double tolerance)
    {
        // Started at rest at the far end, it is there again after each period.
        double[] travel = Travel(ride, limits, -0.03, 4096);
        double[] ends = [.. Enumerable.Range(1, travel.Length - 2).Where(i => travel[i] < travel[i - 1] && travel[i] <= travel[i + 1])
            .Select(i => Lowest(travel, i))];
        Assert.True(ends.Length > 5);
        Near.Relative(period, ends[^1] / ends.Length * Seconds, tolerance);
    }

    private static double Lowest(double[] x, int i) => i + 0.5 * (x[i - 1] - x[i + 1]) / (x[i - 1] - 2 * x[i] + x[i + 1]);

    private static double[] Travel(in RideParameters ride, RideLimits limits, double start, int samples)
    {
        var travel = new double[samples];
        double[] state = [0, 0, start, 0];
        RideSimulation.Run(ride, limits, new double[samples], Seconds, state, [], travel, []);
        return travel;
    }
}
