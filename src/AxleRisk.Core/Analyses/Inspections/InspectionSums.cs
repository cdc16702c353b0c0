using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Inspections;

/// <summary>What the vehicles of each group come to on a schedule, and the figures made of it, with their 95 % intervals.</summary>
/// <param name="schedule">The schedule.</param>
/// <param name="groups">The sums by group: kinds of points, then the number of vehicles.</param>
internal sealed class InspectionSums(InspectionSchedule schedule, double[][] groups)
{
    /// <summary>The kinds of sums.</summary>
    public const int Kinds = 7;

    private readonly int points = schedule.Points.Length;

    private enum Kind
    {
        Without,
        Fails,
        Found,
        Missed,
        Unfound,
        CleanFails,
        Clean,
    }

    /// <summary>The schedule.</summary>
    public InspectionSchedule Schedule => schedule;

    /// <summary>The failure probability by a point without any look.</summary>
    public Interval Without(int point) => Probability(s => At(s, Kind.Without, point) / s[^1]);

    /// <summary>The failure probability by a point with the looks.</summary>
    public Interval With(int point) => Probability(s => FailedBy(s, point) / s[^1]);

    /// <summary>The probability that a vehicle comes whole to a look and is found cracked.</summary>
    public Interval Found(int point) => Probability(s => At(s, Kind.Found, point) / s[^1]);

    /// <summary>The probability that it comes whole to a look with a crack of a50 or deeper that is not found.</summary>
    public Interval Missed(int point) => Probability(s => At(s, Kind.Missed, point) / s[^1]);

    /// <summary>The probability of a false call at a look.</summary>
    public Interval FalseCalls(int point) =>
        Probability(s => schedule.Points[point].Method!.FalseCalls * At(s, Kind.Unfound, point) / s[^1]);

    /// <summary>The probability that a vehicle whole at a look, which like all before has found nothing, fails before the next or
    /// the end.</summary>
    public Interval FailsBeforeNext(int point) => Probability(s =>
    {
        double fails = 0;
        for (int k = point + 1; k <= NextLook(point); k++)
        {
            fails += At(s, Kind.CleanFails, k);
        }

        return Ratio(fails, At(s, Kind.Clean, point));
    });

    /// <summary>The greatest failure probability of a whole vehicle from one look to the next, beginning and end included.</summary>
    public Interval Greatest() => Probability(GreatestOf);

    /// <summary>The mean cost of a vehicle up to the end, its failure included where that has a cost.</summary>
    public Interval Cost(Scenarios.InspectionTerms terms) => Jackknife.Estimate(groups, s => CostOf(s, terms));

    /// <summary>The estimate of <see cref="Greatest"/> alone.</summary>
    public double GreatestEstimate => GreatestOf(Total());

    /// <summary>The estimate of <see cref="Cost"/> alone.</summary>
    public double CostEstimate(Scenarios.InspectionTerms terms) => CostOf(Total(), terms);

    private double GreatestOf(double[] s)
    {
        (double greatest, double whole, double fails) = (0, s[^1], 0);
        for (int k = 0; k < points; k++)
        {
            fails += At(s, Kind.Fails, k);
            if (schedule.Points[k].Method is not null || k == points - 1)
            {
                greatest = Math.Max(greatest, Ratio(fails, whole));
                (whole, fails) = (At(s, Kind.Found, k) + At(s, Kind.Unfound, k), 0);
            }
        }

        return greatest;
    }

    private double CostOf(double[] s, Scenarios.InspectionTerms terms)
    {
        double cost = (terms.FailureCost ?? 0) * FailedBy(s, points - 1);
        for (int k = 0; k < points; k++)
        {
            if (schedule.Points[k].Method is { } method)
            {
                (double found, double unfound) = (At(s, Kind.Found, k), At(s, Kind.Unfound, k));
                cost += (method.Cost * (found + unfound)) + (terms.RepairCost * found)
                    + (terms.FalseCallCost * method.FalseCalls * unfound);
            }
        }

        return cost / s[^1];
    }

    private int NextLook(int point)
    {
        int next = point + 1;
        while (next < points - 1 && schedule.Points[next].Method is null)
        {
            next++;
        }

        return next;
    }

    private double FailedBy(double[] s, int point)
    {
        CompensatedSum sum = default;
        for (int k = 0; k <= point; k++)
        {
            sum.Add(At(s, Kind.Fails, k));
        }

        return sum.Value;
    }

    private double[] Total() => [.. Enumerable.Range(0, groups[0].Length).Select(i => groups.Sum(g => g[i]))];

    private double At(double[] s, Kind kind, int point) => s[((int)kind * points) + point];

    private static double Ratio(double part, double of) => of > 0 ? part / of : 0;

    private Interval Probability(Func<double[], double> of)
    {
        Interval i = Jackknife.Estimate(groups, of);
        return new Interval(Math.Clamp(i.Estimate, 0, 1), Math.Clamp(i.Low, 0, 1), Math.Clamp(i.High, 0, 1));
    }
}
