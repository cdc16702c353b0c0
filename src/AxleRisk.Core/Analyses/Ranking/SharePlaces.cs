using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>The order of the factors by their share of failure.</summary>
internal static class SharePlaces
{
    /// <summary>
    /// The factors in order, the largest share first and unknown shares last. A factor is tied with the first of a place
    /// where their intervals overlap.
    /// </summary>
    public static ImmutableArray<RankedFactor> InOrder(IEnumerable<RankedFactor> factors)
    {
        RankedFactor[] ordered = [.. factors
            .OrderByDescending(f => double.IsNaN(f.FailureShare.Estimate) ? double.NegativeInfinity : f.FailureShare.Estimate)
            .ThenByDescending(f => f.LifeShare.Estimate)];
        int[] places = new int[ordered.Length];
        int leader = 0;
        for (int i = 0; i < ordered.Length; i++)
        {
            // Not 'is below': where the shares are unknown, so is the order.
            leader = ordered[i].FailureShare.High < ordered[leader].FailureShare.Low ? i : leader;
            places[i] = leader + 1;
        }

        return [.. ordered.Select((f, i) => f with { Place = places[i], IsTied = places.Count(p => p == places[i]) > 1 })];
    }
}
