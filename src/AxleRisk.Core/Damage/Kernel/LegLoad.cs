using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>What the modes of failure beside fatigue and the strikes on the bump stop need of one surface, of one row.</summary>
/// <param name="Ride">The ride.</param>
/// <param name="Moments">Moments of force and travel.</param>
/// <param name="Stop">The bump stop.</param>
/// <param name="SpeedMPerS">Speed, m/s.</param>
internal readonly record struct LegLoad(RideParameters Ride, ModeMoments Moments, BumpStop Stop, double SpeedMPerS)
{
    /// <summary>The static force through the section, N: the wheel load less the weight that lies outboard.</summary>
    public double StaticForceN => (Ride.SprungKg + (1 - Ride.OutboardShare) * Ride.UnsprungKg) * RideLimits.Gravity;
}
