using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Inspections;

/// <summary>
/// What the vehicles of each group come to on a schedule, and the figures made of it, with their 95 % intervals. Where the failure
/// probability by the end is known without a look from elsewhere, failures are told as their ratio to that.
/// </summary>
/// <param name="schedule">The schedule.</param>
/// <param name="groups">The sums by group: kinds of points, then the number of vehicles.</param>
/// <param name="unlooked">The failure probability by the end without a look; null for that of these vehicles.</param>
internal sealed class InspectionSums(InspectionSchedule schedule, double[][] groups, RiskHeadline? unlooked)
{
    /// <summary>The kinds of sums.</summary>
    public const int Kinds = 7;

    private readonly int points = schedule.Points.Length;
    private readonly double[][] groups = groups;

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
    /// <param name="point">The point.</param>
    /// <param name="known">That of elsewhere; null for that of these vehicles.</param>
    public Interval Without(int point, RiskHeadline? known = null) =>
        known?.Probability.Estimate > 0 ? known.Probability : Probability((s, _) => At(s, Kind.Without, point) / s[^1]);

    /// <summary>The failure probability by a point with the looks.</summary>
    /// <param name="point">The point.</param>
    /// <param name="known">That without a look of elsewhere; null for that of these vehicles.</param>
    public Interval With(int point, RiskHeadline? known = null) =>
        schedule.Points.Take(point).All(p => p.Method is null) ? Without(point, known)
        : Anchor(point, known) is { } anchor
            ? anchor.Times(Jackknife.Estimate(groups, s => Ratio(FailedBy(s, point), At(s, Kind.Without, point))))
        : Probability((s, _) => FailedBy(s, point) / s[^1]);

    /// <summary>The probability that a vehicle comes whole to a look and is found cracked.</summary>
    public Interval Found(int point) => Probability((s, _) => At(s, Kind.Found, point) / s[^1]);

    /// <summary>The probability that it comes whole to a look with a crack of a50 or deeper that is not found.</summary>
    public Interval Missed(int point) => Probability((s, _) => At(s, Kind.Missed, point) / s[^1]);

    /// <summary>The probability of a false call at a look.</summary>
    public Interval FalseCalls(int point) =>
        Probability((s, _) => schedule.Points[point].Method!.FalseCalls * At(s, Kind.Unfound, point) / s[^1]);

    /// <summary>The probability that a vehicle whole at a look, which like all before has found nothing, fails before the next or
    /// the end.</summary>
    public Interval FailsBeforeNext(int point) => Probability((s, _) =>
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
    public Interval Cost(InspectionTerms terms) => Estimate((s, scale) => CostOf(s, terms, scale));

    /// <summary>What another plan costs more than this, by the same vehicles.</summary>
    public Interval SavesOver(InspectionSums other, InspectionTerms terms)
    {
        int own = groups[0].Length;
        double[][] both = [.. groups.Zip(other.groups, (a, b) => (double[])[.. a, .. b])];
        return Estimate(both, (s, scale) => other.CostOf(s[own..], terms, scale) - CostOf(s[..own], terms, scale), s => ScaleOf(s[..own]));
    }

    /// <summary>The estimate of <see cref="Greatest"/> alone.</summary>
    public double GreatestEstimate => Total() is var s ? GreatestOf(s, ScaleOf(s)) : 0;

    /// <summary>The estimate of <see cref="Cost"/> alone.</summary>
    public double CostEstimate(InspectionTerms terms) => Total() is var s ? CostOf(s, terms, ScaleOf(s)) : 0;

    /// <summary>The estimate alone of the failure probability by a point without a look.</summary>
    public double WithoutEstimate(int point) => Total() is var s ? ScaleOf(s) * At(s, Kind.Without, point) / s[^1] : 0;

    // What failures without a look are of elsewhere over what they are of these vehicles.
    private double ScaleOf(double[] s) => Anchor(points - 1, unlooked) is { } anchor
        ? anchor.Probability.Estimate * s[^1] / At(s, Kind.Without, points - 1) : 1;

    // None where either saw next to no failure.
    private RiskHeadline? Anchor(int point, RiskHeadline? known) =>
        known?.Probability.Estimate > 0 && groups.Count(g => At(g, Kind.Without, point) > 0) > 1 ? known : null;

    private double GreatestOf(double[] s, double scale)
    {
        (double greatest, double whole, double fails) = (0, s[^1], 0);
        for (int k = 0; k < points; k++)
        {
            fails += At(s, Kind.Fails, k);
            if (schedule.Points[k].Method is not null || k == points - 1)
            {
                greatest = Math.Max(greatest, Ratio(scale * fails, whole));
                (whole, fails) = (At(s, Kind.Found, k) + At(s, Kind.Unfound, k), 0);
            }
        }

        return greatest;
    }

    private double CostOf(double[] s, InspectionTerms terms, double scale)
    {
        double cost = (terms.FailureCost ?? 0) * scale * FailedBy(s, points - 1);
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

    private double[] Total() => Total(groups);

    private static double[] Total(double[][] of) => [.. Enumerable.Range(0, of[0].Length).Select(i => of.Sum(g => g[i]))];

    private double At(double[] s, Kind kind, int point) => s[((int)kind * points) + point];

    private static double Ratio(double part, double of) => of > 0 ? part / of : 0;

    private Interval Probability(Func<double[], double, double> of)
    {
        Interval i = Estimate(of);
        return new Interval(Math.Clamp(i.Estimate, 0, 1), Math.Clamp(i.Low, 0, 1), Math.Clamp(i.High, 0, 1));
    }

    private Interval Estimate(Func<double[], double, double> of) => Estimate(groups, of, ScaleOf);

    // Of sums and the scale of failures; what is not known of elsewhere comes on top.
    private Interval Estimate(double[][] from, Func<double[], double, double> of, Func<double[], double> scaleOf)
    {
        Interval own = Jackknife.Estimate(from, s => of(s, scaleOf(s)));
        if (Anchor(points - 1, unlooked) is not { } anchor)
        {
            return own;
        }

        double[] all = Total(from);
        double more = scaleOf(all) * anchor.Probability.High / anchor.Probability.Estimate;
        double half = Math.Sqrt(Math.Pow(own.High - own.Estimate, 2) + Math.Pow(of(all, more) - own.Estimate, 2));
        return double.IsFinite(half) ? new Interval(own.Estimate, own.Estimate - half, own.Estimate + half) : own;
    }
}
