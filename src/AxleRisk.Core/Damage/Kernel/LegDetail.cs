using AxleRisk.Core.Damage.Fatigue;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>What the damage model says of one leg for one row of input.</summary>
/// <param name="Plain">The stress off the corrugation.</param>
/// <param name="Corrugated">The stress on it; null where the leg has none.</param>
/// <param name="DamagePerKm">Damage per km driven on the leg.</param>
/// <param name="DamagePerKmOfUse">The leg's part in the damage per km of the use: share times damage per km.</param>
internal sealed record LegDetail(StressSummary Plain, StressSummary? Corrugated, double DamagePerKm, double DamagePerKmOfUse);

/// <summary>A random stress in brief.</summary>
/// <param name="Moments">Its spectral moments, MPa^2 Hz^k, thickness correction included.</param>
/// <param name="RmsMPa">Its standard deviation, MPa.</param>
/// <param name="UpCrossingsPerSecond">Rate of upward crossings of its mean, 1/s.</param>
/// <param name="PeaksPerSecond">Rate of its peaks, 1/s.</param>
internal sealed record StressSummary(SpectralMoments Moments, double RmsMPa, double UpCrossingsPerSecond, double PeaksPerSecond)
{
    // The rates are the force's, so that they hold where the stress is infinite.
    internal static StressSummary Of(in SpectralMoments force, double stressPerForce) => new(
        force.Scale(stressPerForce), stressPerForce * force.Rms, force.UpCrossingsPerSecond, force.PeaksPerSecond);
}
