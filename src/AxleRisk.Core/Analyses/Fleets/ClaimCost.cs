using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// The cost of all claims: a sum of as many independent costs as there are claims. Its mean is the product of the means (Wald's
/// equation); its predictive interval comes of simulated fleets.
/// </summary>
internal static class ClaimCost
{
    private const int Fleets = 16_384;

    /// <summary>
    /// A cost is drawn from so many values of equal probability; those beyond the last weigh nothing in an interval of 95 %.
    /// </summary>
    private const int Costs = 16_384;

    /// <summary>Claims of a fleet whose costs are drawn one by one; the sum of those beyond is as good as normal.</summary>
    private const int DrawnOneByOne = 256;

    /// <summary>The cost; null where none is stated.</summary>
    public static CostPrediction? Of(Fleet fleet, DrawMeans byDraw, Prediction claims, ulong seed, int threads)
    {
        Interval expected = claims.Expected;
        Interval Times(double cost) => new(cost * expected.Estimate, cost * expected.Low, cost * expected.High);
        switch (fleet.CostPerClaim)
        {
            case null:
                return null;
            case Value.Uncertain { Distribution: Distribution cost }:
                double[] totals = Simulate(fleet.Vehicles, byDraw.Corrected, cost, seed, threads);
                Array.Sort(totals);
                return new CostPrediction(Times(cost.Mean), OrderStatistics.Quantile(totals, 0.025),
                    OrderStatistics.Quantile(totals, 0.975), Fleets);
            case Value certain:
                return new CostPrediction(Times(certain.Nominal), certain.Nominal * claims.Low, certain.Nominal * claims.High, 0);
        }
    }

    private static double[] Simulate(long vehicles, double[] byDraw, Distribution cost, ulong seed, int threads)
    {
        var costs = new double[Costs];
        for (int i = 0; i < Costs; i++)
        {
            costs[i] = (i + 0.5) / Costs;
        }

        cost.Quantiles(costs, costs);
        var totals = new double[Fleets];
        Parallel.For(0, Fleets, new ParallelOptions { MaxDegreeOfParallelism = threads }, fleet =>
        {
            Span<double> unit = stackalloc double[DrawnOneByOne + 2];
            new RandomStream(new StreamKey(seed, $"fleet.cost_per_claim/{fleet}")).FillUnit(0, unit);
            long claims = new BinomialMixture(vehicles, [byDraw[fleet % byDraw.Length]]).Quantile(unit[^1]);
            Span<double> drawn = unit[..(int)Math.Min(claims, DrawnOneByOne)];
            foreach (ref double one in drawn)
            {
                one = costs[(int)(one * Costs)];
            }

            long beyond = claims - drawn.Length;
            double rest = beyond == 0 ? 0
                : Math.Max(0, (beyond * cost.Mean) + (Math.Sqrt(beyond) * cost.StandardDeviation * StandardNormal.Quantile(unit[^2])));
            totals[fleet] = CompensatedSum.Of(drawn) + rest;
        });
        return totals;
    }
}
