using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage.BumpStops;

/// <summary>What bump-stop strikes add to damage and to the largest loads.</summary>
internal static class StrikeDamage
{
    /// <summary>
    /// Range of the section force, over its standard deviation, of the cycle that a strike makes larger; fitted with the coefficients of
    /// <see cref="StrikeLoad"/>.
    /// </summary>
    public const double RangeWithoutStrike = 5.692;

    /// <summary>
    /// Clearance over the standard deviation of the travel beyond which there is no strike in a thousand million seconds.
    /// </summary>
    public const double GreatestLevel = 7;

    /// <summary>Damage per second: every strike turns one cycle into a larger one.</summary>
    /// <param name="ride">The ride.</param>
    /// <param name="moments">Moments on the road.</param>
    /// <param name="stop">The stop.</param>
    /// <param name="stressPerForce">Stress per unit of force at the detail, MPa/N.</param>
    /// <param name="curve">The S-N curve.</param>
    public static double PerSecond(
        in RideParameters ride, in ModeMoments moments, BumpStop stop, double stressPerForce, SnConstants curve)
    {
        if (!Strikes(moments, stop) || !double.IsFinite(stressPerForce))
        {
            return 0;
        }

        var load = new StrikeLoad(ride, moments, stop);
        double without = RangeWithoutStrike * Math.Sqrt(moments.Force0);
        double plain = MinerSum.OfRange(stressPerForce * without, curve);
        double sum = 0;
        for (int i = 0; i < StrikeLoad.Count; i++)
        {
            sum += StrikeLoad.Weight(i) * (MinerSum.OfRange(stressPerForce * (without + load.ForceN(i)), curve) - plain);
        }

        return load.PerSecond * sum;
    }

    /// <summary>
    /// Rate at which strikes take the section force above a level, 1/s. At a strike the force of the linear ride is normal given
    /// the compression.
    /// </summary>
    /// <param name="ride">The ride.</param>
    /// <param name="moments">Moments on the road.</param>
    /// <param name="stop">The stop.</param>
    /// <param name="forceN">The level above the static force, N.</param>
    public static double ExceedancesPerSecond(in RideParameters ride, in ModeMoments moments, BumpStop stop, double forceN)
    {
        if (!Strikes(moments, stop))
        {
            return 0;
        }

        var load = new StrikeLoad(ride, moments, stop);
        double sd = Math.Sqrt(moments.Force0);
        double mean = load.Correlation * load.Level * sd;
        double residual = sd * Math.Sqrt(Math.Max(1e-12, 1 - load.Correlation * load.Correlation));
        double sum = 0;
        for (int i = 0; i < StrikeLoad.Count; i++)
        {
            sum += StrikeLoad.Weight(i) * StandardNormal.Upper((forceN - mean - StrikeLoad.PeakOverDamage * load.ForceN(i)) / residual);
        }

        return load.PerSecond * sum;
    }

    private static bool Strikes(in ModeMoments moments, BumpStop stop) =>
        moments.Travel0 > 0 && stop.NPerM > 0 && stop.ClearanceM < GreatestLevel * Math.Sqrt(moments.Travel0);
}
