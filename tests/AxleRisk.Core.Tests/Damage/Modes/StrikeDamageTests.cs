using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>The damage of bump-stop strikes against the simulation in time, and what a helper spring does.</summary>
public class StrikeDamageTests
{
    private const double StressPerForce = 0.012;
    private static readonly RideParameters Loaded = new(600, 90, 45e3, 4000, 300e3, 200, 0.5);
    private static readonly SnConstants Curve = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean.Constants;

    // Sixteen records of 128 s: the ratio of damage with and without stop, on the same roads, has a standard error of 1 to 4 %. Roads: ISO
    // 8608 classes D and E.
    [Theory]
    [InlineData(1024, 80, 40, 800e3)]
    [InlineData(4096, 50, 40, 800e3)]
    [InlineData(4096, 80, 60, 300e3)]
    public void The_damage_with_a_stop_is_that_of_the_simulation_within_15_percent(double roughness, double speed, double clearance,
        double stop)
    {
        (double simulated, double fast, _, _) = Compare(Loaded, roughness, speed, clearance, stop, 2);
        Near.Relative(simulated, fast, 0.15);
    }

    // Crossings of the travel through the clearance without a stop's force: Rice 1944.
    [Fact]
    public void The_strike_rate_is_that_of_the_linear_travel()
    {
        (_, _, double strikes, double counted) = Compare(Loaded, 1024, 80, 40, 0, 2);
        Near.Relative(counted, strikes, 0.06);
    }

    [Fact]
    public void A_helper_spring_adds_a_little_damage_by_its_rate_and_saves_far_more_of_the_strikes()
    {
        double payload = 200;
        RideParameters helped = Loaded with { SpringNPerM = 60e3 };
        (double without, double strikesWithout) = Damage(Loaded, BumpStopClearance.UnderLoad(0.095, payload, 45e3));
        (double with, double strikesWith) = Damage(helped, BumpStopClearance.UnderLoad(0.095, payload, 60e3));
        Assert.InRange(with / without, 1.005, 1.10);
        Assert.InRange(strikesWith / strikesWithout, 0, 0.6);
    }

    [Fact]
    public void No_stop_no_strikes_and_more_clearance_fewer()
    {
        double last = double.PositiveInfinity;
        foreach (double clearance in new[] { 0.02, 0.04, 0.06, 0.08, 0.12, 0.4, double.PositiveInfinity })
        {
            double strikes = Damage(Loaded, clearance).Strikes;
            Assert.True(strikes < last || strikes == 0);
            last = strikes;
        }

        Assert.Equal(0, last);
    }

    [Theory]
    [InlineData(0.08, 0, 45e3, 0.08)]
    [InlineData(0.08, 200, 45e3, 0.08 - 200 * 9.80665 / 45e3)]
    [InlineData(0.04, 400, 45e3, 0)]
    public void Payload_takes_clearance(double empty, double payload, double spring, double expected) =>
        Assert.Equal(expected, BumpStopClearance.UnderLoad(empty, payload, spring), 1e-15);

    private static (double Plain, double Strikes) Damage(RideParameters ride, double clearance)
    {
        (SpectralMoments force, ModeMoments moments) = Moments(ride, 1024e-6, 80 / 3.6);
        return (DamageRate.PerSecond(force, StressPerForce, Curve, CountingMethod.Dirlik),
            StrikeDamage.PerSecond(ride, moments, new BumpStop(clearance, 300e3), StressPerForce, Curve));
    }

    private static (double Simulated, double Fast, double StrikesPerSecond, double Counted) Compare(
        RideParameters ride, double roughness, double kmPerHour, double clearanceMm, double stop, int periods)
    {
        double speed = kmPerHour / 3.6;
        var road = new double[RecordGrid.Bins];
        RoadAmplitudes.Fill(speed, 0.18, roughness * 1e-6, 2, road);
        var linear = new SurfaceQuestion(ride, new RideLimits { BumpClearanceM = clearanceMm / 1000 }, road, StressPerForce, Curve);
        var stopped = linear with { Limits = linear.Limits with { BumpStopNPerM = stop } };
        SurfaceResult[] results = new SurfaceSimulation().Run(
            [linear, stopped], new RandomStream(new StreamKey(1, $"strikes {roughness} {kmPerHour}")), periods);
        (SpectralMoments force, ModeMoments moments) = Moments(ride, roughness * 1e-6, speed);
        double plain = DamageRate.PerSecond(force, StressPerForce, Curve, CountingMethod.Dirlik);
        double strikes = StrikeDamage.PerSecond(ride, moments, new BumpStop(clearanceMm / 1000, stop), StressPerForce, Curve);
        return (results[1].DamagePerSecond.Average(), plain + strikes,
            new StrikeLoad(ride, moments, new BumpStop(clearanceMm / 1000, Math.Max(stop, 1))).PerSecond, results[0].BumpStrikesPerSecond);
    }

    private static (SpectralMoments Force, ModeMoments Moments) Moments(RideParameters ride, double roughness, double speed)
    {
        Span<double> gain = stackalloc double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(ride, gain);
        var gains = new RideGains[FrequencyGrid.Points];
        ModeMoments.FillGains(ride, gains);
        return (ForceSpectrum.OnRoad(gain, speed, 0.18, roughness, 2), ModeMoments.OnRoad(gains, speed, 0.18, roughness, 2));
    }
}
