using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Roads;

namespace AxleRisk.Core.Damage.Spectra;

/// <summary>The spectrum of the force through the section, in two steps: the ride once a vehicle, the road once a leg.</summary>
internal static class ForceSpectrum
{
    /// <summary>Fills <paramref name="ride"/> with squared gain times trapezoid weight at every point of the grid, N^2/m^2 Hz.</summary>
    public static void FillRide(in RideParameters p, Span<double> ride)
    {
        for (int i = 0; i < FrequencyGrid.Points; i++)
        {
            ride[i] = Ride.ForceGainSquared(p, FrequencyGrid.Hz[i]) * FrequencyGrid.Weights[i];
        }
    }

    /// <summary>Moments of the force on a road without corrugation, N^2 Hz^k.</summary>
    public static SpectralMoments OnRoad(
        ReadOnlySpan<double> ride, double speed, double contactLength, double roughness, double waviness)
    {
        var sum = new MomentSum();
        for (int i = 0; i < FrequencyGrid.Points; i++)
        {
            double f = FrequencyGrid.Hz[i];
            double n = f / speed;
            // At speed v the density over frequency is G(f) = Gd(f/v)/v.
            sum.Add(f, ride[i] * Road.Psd(n, roughness, waviness) / speed * Enveloping.Gain(n, contactLength));
        }
        return sum.Moments;
    }

    /// <summary>Moments that a corrugation adds, N^2 Hz^k.</summary>
    public static SpectralMoments OnCorrugation(
        ReadOnlySpan<double> ride, double speed, double contactLength, double wavelength, double rms)
    {
        var sum = new MomentSum();
        for (int i = 0; i < FrequencyGrid.Points; i++)
        {
            double f = FrequencyGrid.Hz[i];
            double n = f / speed;
            sum.Add(f, ride[i] * Corrugation.Psd(n, wavelength, rms) / speed * Enveloping.Gain(n, contactLength));
        }
        return sum.Moments;
    }

    private struct MomentSum
    {
        private double m0;
        private double m1;
        private double m2;
        private double m4;

        public readonly SpectralMoments Moments => new(m0, m1, m2, m4);

        public void Add(double f, double density)
        {
            double squared = f * f;
            m0 += density;
            m1 += density * f;
            m2 += density * squared;
            m4 += density * squared * squared;
        }
    }
}
