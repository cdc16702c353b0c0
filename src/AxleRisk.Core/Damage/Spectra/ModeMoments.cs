using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Roads;

namespace AxleRisk.Core.Damage.Spectra;

/// <summary>
/// Moments of section force and suspension travel on one stretch of road, over frequency in Hz: what the failure modes besides
/// fatigue need. Forces in N, travel in m.
/// </summary>
/// <param name="Force0">Variance of the force.</param>
/// <param name="Force2">Its second moment.</param>
/// <param name="Travel0">Variance of the compression of the suspension.</param>
/// <param name="Travel2">Its second moment.</param>
/// <param name="ForceTravel">Covariance of force and compression.</param>
internal readonly record struct ModeMoments(double Force0, double Force2, double Travel0, double Travel2, double ForceTravel)
{
    /// <summary>Moments on a road without corrugation; the grid, band and enveloping of the fatigue damage.</summary>
    /// <param name="gains">From <see cref="FillGains"/>.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="contactLength">Contact length, m.</param>
    /// <param name="roughness">Density at 0.1 cycles/m, m^3.</param>
    /// <param name="waviness">Exponent of the road spectrum.</param>
    public static ModeMoments OnRoad(
        ReadOnlySpan<RideGains> gains, double speed, double contactLength, double roughness, double waviness)
    {
        var sum = new Sum();
        double squared = roughness * Road.ReferenceWavenumber * Road.ReferenceWavenumber;
        for (int i = 0; i < FrequencyGrid.Points; i++)
        {
            double n = FrequencyGrid.Hz[i] / speed;
            double road = waviness == 2 ? squared / (n * n) : Road.Psd(n, roughness, waviness);
            sum.Add(i, gains[i], road / speed * Enveloping.Gain(n, contactLength));
        }
        return sum.Moments;
    }

    /// <summary>Moments that a corrugation adds.</summary>
    public static ModeMoments OnCorrugation(
        ReadOnlySpan<RideGains> gains, double speed, double contactLength, double wavelength, double rms)
    {
        var sum = new Sum();
        for (int i = 0; i < FrequencyGrid.Points; i++)
        {
            double n = FrequencyGrid.Hz[i] / speed;
            sum.Add(i, gains[i], Corrugation.Psd(n, wavelength, rms) / speed * Enveloping.Gain(n, contactLength));
        }
        return sum.Moments;
    }

    /// <summary>Fills the gains at every point of the grid.</summary>
    public static void FillGains(in RideParameters ride, Span<RideGains> gains)
    {
        for (int i = 0; i < FrequencyGrid.Points; i++)
        {
            gains[i] = RideGains.At(ride, FrequencyGrid.Hz[i]);
        }
    }

    /// <summary>The moments of the sum of two independent roads.</summary>
    public ModeMoments Plus(in ModeMoments other) => new(
        Force0 + other.Force0, Force2 + other.Force2, Travel0 + other.Travel0, Travel2 + other.Travel2, ForceTravel + other.ForceTravel);

    private struct Sum
    {
        private double force0;
        private double force2;
        private double travel0;
        private double travel2;
        private double forceTravel;

        public readonly ModeMoments Moments => new(force0, force2, travel0, travel2, forceTravel);

        public void Add(int point, in RideGains gains, double road)
        {
            double weighted = road * FrequencyGrid.Weights[point];
            double squared = FrequencyGrid.Hz[point] * FrequencyGrid.Hz[point];
            force0 += weighted * gains.ForceSquared;
            force2 += weighted * gains.ForceSquared * squared;
            travel0 += weighted * gains.TravelSquared;
            travel2 += weighted * gains.TravelSquared * squared;
            forceTravel += weighted * gains.InPhase;
        }
    }
}
