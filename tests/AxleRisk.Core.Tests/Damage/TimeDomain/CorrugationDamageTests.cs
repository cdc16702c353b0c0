using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// On a corrugated road the damage peaks where speed over wavelength meets the wheel hop, and falls beyond it: common experience
/// of drivers,
/// no source. Both models must say so.
/// </summary>
public class CorrugationDamageTests
{
    private const double Wavelength = 0.8, Rms = 0.004, Contact = 0.1, Roughness = 64e-6, Stress = 0.01;
    private static readonly RideParameters Car = new(600, 90, 45e3, 2500, 300e3, 200, 0.5);
    private static readonly SnConstants Curve = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean.Constants;

    // Speeds as the corrugation's frequency over the wheel hop's.
    private static readonly double[] Frequencies = [0.5, 0.7, 0.85, 0.95, 1.05, 1.2, 1.5, 2.0];

    [Fact]
    public void The_fast_model_s_damage_per_second_peaks_at_the_wheel_hop() => AssertPeak(Fast);

    [Fact]
    public void The_simulation_s_damage_per_second_peaks_at_the_wheel_hop() => AssertPeak(Simulated);

    private static void AssertPeak(Func<double, double> damage)
    {
        double hop = Ride.WheelHopHz(Car);
        double[] values = [.. Frequencies.Select(f => damage(f * hop * Wavelength))];
        double peak = Frequencies[Array.IndexOf(values, values.Max())];
        // The damped peak lies a little off the undamped frequency, and its grid is coarse.
        Assert.InRange(peak, 0.85, 1.2);
        Assert.True(values[0] < values.Max() / 3, $"{values[0]} far below the hop, {values.Max()} at it");
        Assert.True(values[^1] < values.Max() / 3, $"{values[^1]} far beyond the hop, {values.Max()} at it");
        int at = Array.IndexOf(values, values.Max());
        for (int i = at + 1; i < values.Length; i++)
        {
            Assert.True(values[i] < values[i - 1], $"rises again at {Frequencies[i]} of the hop");
        }
    }

    private static double Fast(double speed)
    {
        Span<double> ride = stackalloc double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(Car, ride);
        SpectralMoments moments = ForceSpectrum.OnRoad(ride, speed, Contact, Roughness, 2)
            .Plus(ForceSpectrum.OnCorrugation(ride, speed, Contact, Wavelength, Rms));
        return DamageRate.PerSecond(moments, Stress, Curve, CountingMethod.Dirlik);
    }

    private static double Simulated(double speed)
    {
        var road = new double[RecordGrid.Bins];
        RoadAmplitudes.FillCorrugated(speed, Contact, Roughness, 2, Wavelength, Rms, road);
        var limits = new RideLimits { StaticTyreForceN = RideLimits.StaticTyreForce(Car), LiftsOff = true };
        return new SurfaceSimulation().Run(
            [new SurfaceQuestion(Car, limits, road, Stress, Curve)], new RandomStream(new StreamKey(1, "corrugated")),
                1)[0].DamagePerSecond.Average();
    }
}
