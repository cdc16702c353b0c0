using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;

namespace AxleRisk.Core.Damage.BumpStops;

/// <summary>
/// The force of bump-stop strikes, from the moments of the linear ride. The rate is Rice's (1944) of the compression through the clearance;
/// the velocity there has a Rayleigh density (Rice), so that its energy has an exponential one. The body, a mass ms, meets the
/// stop at that velocity v
/// while the linear ride slows it by a: energy gives the depth <c>e = [sqrt(a^2 + w^2 v^2) - a] / w^2</c>, w^2 = k/ms, k the stop
/// in series with
/// the tyre, and k e the force. How much of that reaches the section depends on how far section force and travel go together.
/// The four coefficients were fitted to the rainflow damage of 286 simulated rides of 512 s, see docs/accuracy.md.
/// </summary>
internal readonly struct StrikeLoad
{
    /// <summary>Slowing by the linear ride over that at the clearance, <c>c (2 pi)^2 m2/m0</c> of the compression.</summary>
    public const double Slowing = 1.386;

    /// <summary>Weight of stop over tyre rate in the series of the two.</summary>
    public const double TyreGive = 0.075;

    /// <summary>Part of the stop's force that reaches the section at a correlation of 0.5 of section force and compression.</summary>
    public const double Transfer = 0.216;

    /// <summary>How that part grows with the correlation.</summary>
    public const double TransferSlope = 1.226;

    /// <summary>
    /// Force of a strike in the largest loads over that in the damage: the fit to damage weighs ordinary strikes, and what is
    /// left out there
    /// (the wheel's own swing on the stop) tells in the rare ones.
    /// </summary>
    public const double PeakOverDamage = 3;

    // Gauss-Laguerre, six points (numpy 1.24, laggauss): the energy of the velocity over its mean.
    private static readonly double[] Energies =
        [0.2228466041792607, 1.1889321016726226, 2.992736326059314, 5.77514356910451, 9.83746741838259, 15.982873980601703];

    private static readonly double[] EnergyWeights =
        [0.45896467394996476, 0.41700083077212, 0.11337338207404488, 0.010399197453149087, 0.00026101720281493265, 8.985479064296213e-07];

    private readonly double perSquaredDepth;
    private readonly double slowing;
    private readonly double meanVelocitySquared;
    private readonly double force;

    /// <summary>The strikes of a ride on a road.</summary>
    public StrikeLoad(in RideParameters ride, in ModeMoments moments, BumpStop stop)
    {
        double rate = stop.NPerM / (1 + TyreGive * stop.NPerM / ride.TyreNPerM);
        double sd = Math.Sqrt(moments.Travel0);
        Level = stop.ClearanceM / sd;
        Correlation = moments.ForceTravel / (sd * Math.Sqrt(moments.Force0));
        double squaredFrequency = 4 * Math.PI * Math.PI * moments.Travel2 / moments.Travel0;
        PerSecond = Math.Sqrt(moments.Travel2 / moments.Travel0) * Math.Exp(-0.5 * Level * Level);
        perSquaredDepth = rate / ride.SprungKg;
        slowing = Slowing * stop.ClearanceM * squaredFrequency;
        meanVelocitySquared = squaredFrequency * moments.Travel0;
        force = Math.Max(0, Transfer * (1 + TransferSlope * (Correlation - 0.5))) * rate;
    }

    /// <summary>Points of the quadrature over the velocity.</summary>
    public static int Count => Energies.Length;

    /// <summary>Strikes per second, 1/s.</summary>
    public double PerSecond { get; }

    /// <summary>Clearance over the standard deviation of the travel.</summary>
    public double Level { get; }

    /// <summary>Correlation of section force and compression.</summary>
    public double Correlation { get; }

    /// <summary>Probability of a point of the quadrature.</summary>
    public static double Weight(int point) => EnergyWeights[point];

    /// <summary>Energy of the velocity at a point of the quadrature, over its mean.</summary>
    public static double Energy(int point) => Energies[point];

    /// <summary>What a strike of a velocity adds to the section force, N.</summary>
    public double ForceN(int point)
    {
        double squared = 2 * Energies[point] * meanVelocitySquared;
        return force * squared / (Math.Sqrt(slowing * slowing + perSquaredDepth * squared) + slowing);
    }
}
