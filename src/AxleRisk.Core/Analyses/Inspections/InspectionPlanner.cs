using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Inspections;

/// <summary>
/// Seeks regular plans, each judged on the same vehicles. The fewest looks: the first as late as the target allows, then so many at even
/// distances that it is kept to the end. The cheapest: a search over the number and the place of the first.
/// </summary>
internal sealed class InspectionPlanner(InspectionRows rows, double endKm, InspectionTerms terms, RunOptions options)
{
    /// <summary>The most looks of a plan.</summary>
    public const int MostLooks = 48;

    /// <summary>The vehicles of a group that a search goes by.</summary>
    public const int VehiclesOfGroup = 64;

    // Places of the first look that are tried, as parts of the way.
    private const int Places = 24;

    private static readonly int[] Numbers = [1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24];

    /// <summary>First look, km, and number of looks of the fewest that keep the target; no look where none is needed.</summary>
    /// <returns>Null where no plan of <see cref="MostLooks"/> looks keeps it.</returns>
    public (double FirstKm, int Looks)? Fewest(InspectionMethod method, double target)
    {
        if (Unlooked(endKm) <= target)
        {
            return (endKm, 0);
        }

        double first = Latest(target);
        if (!(first > rows.FromKm))
        {
            return null;
        }

        bool Keeps(int looks) => Judge(method, first, looks).GreatestEstimate <= target;
        (int less, int enough) = (0, 1);
        while (!Keeps(enough))
        {
            if (enough == MostLooks)
            {
                return null;
            }

            (less, enough) = (enough, Math.Min(MostLooks, 2 * enough));
        }

        while (enough - less > 1)
        {
            int middle = (less + enough) / 2;
            (less, enough) = Keeps(middle) ? (less, middle) : (middle, enough);
        }

        return (first, enough);
    }

    /// <summary>First look, km, and number of looks of the least expected cost; no look where none pays.</summary>
    public (double FirstKm, int Looks) Cheapest(InspectionMethod method)
    {
        (double First, int Looks, double Cost) best = (endKm, 0, terms.FailureCost!.Value * Unlooked(endKm));
        int place = Places / 4, since = 0, least = rows.FromKm > 0 ? 0 : 1; // a vehicle that is on its way can be looked at where it is
        foreach (int looks in Numbers)
        {
            // The best place moves little from one number to the next: walk from there.
            double CostAt(int at) => Judge(method, PlaceOf(at), looks).CostEstimate(terms);
            double cost = CostAt(place);
            foreach (int step in (ReadOnlySpan<int>)[-1, 1])
            {
                while (place + step >= least && place + step < Places && CostAt(place + step) is var next && next < cost)
                {
                    (place, cost) = (place + step, next);
                }
            }

            (best, since) = cost < best.Cost ? ((PlaceOf(place), looks, cost), 0) : (best, since + 1);
            if (since == 3)
            {
                break;
            }
        }

        return (best.First, best.Looks);
    }

    private double PlaceOf(int place) => Math.Max(rows.FromKm, InspectionSchedule.Whole(PartOf(place, Places), endKm));

    // The distance at a part of the way.
    private double PartOf(int part, int parts) => rows.FromKm + ((endKm - rows.FromKm) * part / parts);

    private InspectionSums Judge(InspectionMethod method, double firstKm, int looks) =>
        rows.Sums(InspectionSchedule.Regular(method, firstKm, looks, endKm), terms.RepairedLife, options, VehiclesOfGroup);

    private double Unlooked(double km) =>
        rows.Sums(InspectionSchedule.Of([], [km], endKm), 1, options, VehiclesOfGroup).WithoutEstimate(0);

    // The latest distance, of 1000 even ones, by which the target is kept.
    private double Latest(double target)
    {
        const int steps = 1000;
        (int kept, int passed) = (0, steps);
        while (passed - kept > 1)
        {
            int middle = (kept + passed) / 2;
            (kept, passed) = Unlooked(PartOf(middle, steps)) <= target ? (middle, passed) : (kept, middle);
        }

        double km = PartOf(kept, steps);
        return endKm >= 1000 ? Math.Floor(km) : km;
    }
}
