using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>The vehicles of a two-level sample: for each its median life and what its owner drives.</summary>
/// <param name="Plan">How the sample is divided.</param>
/// <param name="LnCentre">The median of ln life (km) by outer draw and vehicle.</param>
/// <param name="LnKmPerYear">ln km driven in a year, likewise; empty where nobody asked.</param>
/// <param name="Sigma">The standard deviation of ln life given the vehicle.</param>
/// <param name="Threads">Threads that sums may use; no digit depends on them.</param>
internal sealed record FleetSample(NestedPlan Plan, double[][] LnCentre, double[][] LnKmPerYear, double Sigma, int Threads = 1)
{
    private const double MonthsPerYear = 12;

    /// <summary>The probability of failing by a distance, for each outer draw.</summary>
    public double[] FailedBy(double km)
    {
        double lnKm = Math.Log(km);
        return EachDraw((draw, vehicle) => ConditionalLife.FailedBy(lnKm, LnCentre[draw][vehicle], Sigma));
    }

    /// <summary>The probability of failing by an age and within a distance, whichever comes first, for each outer draw.</summary>
    public double[] FailedWithin(double months, double km)
    {
        double lnYears = Math.Log(months / MonthsPerYear);
        double lnKm = Math.Log(km);
        return EachDraw((draw, vehicle) => ConditionalLife.FailedBy(
            Math.Min(LnKmPerYear[draw][vehicle] + lnYears, lnKm), LnCentre[draw][vehicle], Sigma));
    }

    /// <summary>The share of the vehicles whose warranty is ended by its distance rather than by its age.</summary>
    public double EndedByDistance(double months, double km)
    {
        double lnEnd = Math.Log(km) - Math.Log(months / MonthsPerYear);
        double[] shares = EachDraw((draw, vehicle) => LnKmPerYear[draw][vehicle] > lnEnd ? 1 : 0);
        return CompensatedSum.Of(shares) / shares.Length;
    }

    /// <summary>
    /// The part of the variance between the outer draws' probabilities that is only the error of their inner draws, from the
    /// two halves of each; somewhat too large where the plan is better than independent draws.
    /// </summary>
    public double InnerShare(double months, double km)
    {
        double lnYears = Math.Log(months / MonthsPerYear);
        double lnKm = Math.Log(km);
        RunningMoments between = default;
        double within = 0;
        for (int draw = 0; draw < LnCentre.Length; draw++)
        {
            int half = LnCentre[draw].Length / 2;
            double first = Mean(draw, 0, half);
            double second = Mean(draw, half, 2 * half);
            between.Add((first + second) / 2);
            within += (first - second) * (first - second) / 4;
        }

        return within == 0 ? 0 : Math.Min(1, within / LnCentre.Length / between.Variance);

        double Mean(int draw, int from, int end)
        {
            double sum = 0;
            for (int vehicle = from; vehicle < end; vehicle++)
            {
                sum += ConditionalLife.FailedBy(Math.Min(LnKmPerYear[draw][vehicle] + lnYears, lnKm), LnCentre[draw][vehicle], Sigma);
            }

            return sum / (end - from);
        }
    }

    // Each draw has one place and one order of summing: no digit depends on the threads.
    private double[] EachDraw(Func<int, int, double> ofVehicle)
    {
        var means = new double[LnCentre.Length];
        Parallel.For(0, means.Length, new ParallelOptions { MaxDegreeOfParallelism = Threads }, draw =>
        {
            CompensatedSum sum = default;
            for (int vehicle = 0; vehicle < LnCentre[draw].Length; vehicle++)
            {
                sum.Add(ofVehicle(draw, vehicle));
            }

            means[draw] = sum.Value / LnCentre[draw].Length;
        });
        return means;
    }
}
