using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>What is simulated: a ride on a road at a speed, and the detail whose damage is counted.</summary>
/// <param name="Ride">The ride.</param>
/// <param name="Limits">Where it stops being linear.</param>
/// <param name="Amplitudes">The road, from <see cref="RoadAmplitudes"/>.</param>
/// <param name="StressPerForceMPaPerN">Stress per force at the detail, thickness correction included, MPa/N.</param>
/// <param name="Curve">Its S-N curve.</param>
internal sealed record SurfaceQuestion(
    RideParameters Ride, RideLimits Limits, double[] Amplitudes, double StressPerForceMPaPerN, SnConstants Curve);
