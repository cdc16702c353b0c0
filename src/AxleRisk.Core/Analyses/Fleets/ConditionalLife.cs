using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// The one place that says how likely a vehicle of the sample has failed by a distance, given its sampled factors: ln life is
/// normal about a centre, with what the Miner sum and the S-N scatter leave to chance; certain where they leave nothing.
/// </summary>
internal static class ConditionalLife
{
    /// <summary>P(life &lt; distance | the vehicle).</summary>
    /// <param name="lnKm">The logarithm of the distance in km.</param>
    /// <param name="lnCentre">The median of ln life of the vehicle.</param>
    /// <param name="sigma">The standard deviation of ln life given the vehicle; 0 where its life is certain.</param>
    public static double FailedBy(double lnKm, double lnCentre, double sigma) =>
        sigma > 0 ? StandardNormal.Cumulative((lnKm - lnCentre) / sigma) : lnCentre < lnKm ? 1 : 0;
}
