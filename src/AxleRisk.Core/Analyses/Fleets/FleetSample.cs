using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

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
    public DrawMeans FailedBy(double km)
    {
        double lnKm = Math.Log(km);
        return EachDraw((draw, vehicle) => ConditionalLife.FailedBy(lnKm, LnCentre[draw][vehicle], Sigma));
    }

    /// <summary>The probability of failing by an age and within a distance, whichever comes first, for each outer draw.</summary>
    public DrawMeans FailedWithin(double months, double km)
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
        DrawMeans shares = EachDraw((draw, vehicle) => LnKmPerYear[draw][vehicle] > lnEnd ? 1 : 0);
        return DrawStatistic.Of(shares, TargetBasis.Average);
    }

    // Each draw has one place and one order of summing: no digit depends on the threads.
    private DrawMeans EachDraw(Func<int, int, double> ofVehicle)
    {
        double[][] means = Workspace.Columns(Plan.Parts, LnCentre.Length);
        Parallel.For(0, LnCentre.Length, new ParallelOptions { MaxDegreeOfParallelism = Threads }, draw =>
        {
            for (int part = 0; part < Plan.Parts; part++)
            {
                CompensatedSum sum = default;
                for (int vehicle = part * Plan.InnerOfPart; vehicle < (part + 1) * Plan.InnerOfPart; vehicle++)
                {
                    sum.Add(ofVehicle(draw, vehicle));
                }

                means[part][draw] = sum.Value / Plan.InnerOfPart;
            }
        });
        return new DrawMeans(means);
    }
}
