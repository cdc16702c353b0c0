using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// The number of claims. Given what the fleet shares, its vehicles fail independently of one another with one probability,
/// the month of sale of each being drawn with the stated shares: the number is binomial, and the outer draws mix it.
/// </summary>
internal static class ClaimCounts
{
    /// <summary>Outer draws told apart in the bands of the months.</summary>
    private const int MostOfMonth = 256;

    /// <summary>A vehicle is sold in the middle of its month.</summary>
    private const double HalfMonth = 0.5;

    /// <summary>The number of vehicles for which a thing of these probabilities, by outer draw, happens.</summary>
    public static Prediction Predict(long vehicles, DrawMeans byDraw, int most = int.MaxValue)
    {
        (long low, long high) = new BinomialMixture(vehicles, byDraw.Corrected, most).Range();
        double mean = DrawStatistic.Of(byDraw, TargetBasis.Average);
        Interval expected = GroupInterval.Around(vehicles * mean, DrawStatistic.OfReplicates(byDraw, TargetBasis.Average)
            .Select(p => vehicles * p));
        return new Prediction(expected.Within(0, vehicles), low, high);
    }

    /// <summary>The share of the variance of the count that the outer draws bring: n^2 Var(p) over that plus E[n p (1 - p)].</summary>
    public static double UnknownShare(long vehicles, DrawMeans byDraw)
    {
        RunningMoments p = default;
        double chance = 0;
        foreach (double ofDraw in byDraw.Corrected)
        {
            p.Add(ofDraw);
            chance += ofDraw * (1 - ofDraw);
        }

        double shared = vehicles * (p.Variance * (p.Count - 1) / p.Count);
        return shared == 0 ? 0 : shared / (shared + (chance / p.Count));
    }

    /// <summary>The claims by month since the first sale.</summary>
    public static ImmutableArray<ClaimMonth> ByMonth(Fleet fleet, FleetSample sample)
    {
        // Ages at the ends of the months: half a month, one and a half and so on, and the end of the warranty.
        DrawMeans[] byAge = sample.FailedWithin(
            [.. Enumerable.Range(0, fleet.WarrantyMonths).Select(k => k + HalfMonth), fleet.WarrantyMonths], fleet.WarrantyKm);
        int months = fleet.SaleShares.Length + fleet.WarrantyMonths;
        var soFar = new DrawMeans[months + 1];
        soFar[0] = DrawMeans.Sum([(0, byAge[0])]);
        for (int month = 1; month <= months; month++)
        {
            soFar[month] = DrawMeans.Sum([.. Enumerable.Range(1, Math.Min(month, fleet.SaleShares.Length))
                .Select(sale => (fleet.SaleShares[sale - 1], byAge[Math.Min(month - sale, fleet.WarrantyMonths)]))]);
        }

        return
        [
            .. Enumerable.Range(1, months).AsParallel().AsOrdered().WithDegreeOfParallelism(Math.Min(sample.Threads, 512))
                .Select(m => new ClaimMonth(
                m,
                Predict(fleet.Vehicles, DrawMeans.Sum([(1, soFar[m]), (-1, soFar[m - 1])]), MostOfMonth),
                Predict(fleet.Vehicles, soFar[m], MostOfMonth))),
        ];
    }
}
