using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>The distinct design points of a limit state, the nearest first.</summary>
internal sealed class DesignPointSet
{
    /// <summary>Points closer than this, seen from the origin, are one: normal densities about them overlap anyway.</summary>
    private const double LeastAngleDegrees = 15;

    private const double LeastDistance = 0.5;

    /// <summary>Points whose first-order probability is below this part of the greatest are left out.</summary>
    private const double LeastContribution = 0.01;

    private readonly List<DesignPoint> points = [];

    /// <summary>The points that matter, the nearest first.</summary>
    public IReadOnlyList<DesignPoint> Points =>
        [.. points.Where(p => Phi(p) >= LeastContribution * Phi(points[0]))];

    /// <summary>The least beta; null without a point.</summary>
    public double? Beta => points.Count == 0 ? null : points[0].Beta;

    /// <summary>The sum of the first-order probabilities.</summary>
    public double FirstOrder => points.Sum(Phi);

    /// <summary>Adds a point; false where it is one of those already here.</summary>
    public bool Add(DesignPoint point)
    {
        int same = points.FindIndex(p => IsSame(p, point));
        if (same < 0)
        {
            points.Add(point);
        }
        else if (point.Beta < points[same].Beta && (!point.IsApproximate || points[same].IsApproximate))
        {
            points[same] = point;
        }

        points.Sort((a, b) => a.Beta.CompareTo(b.Beta));
        return same < 0;
    }

    /// <summary>
    /// How far a failing point lies beyond the nearest touching plane; a negative number is not explained by any point here.
    /// </summary>
    public double Beyond(ReadOnlySpan<double> u)
    {
        double most = double.NegativeInfinity;
        foreach (DesignPoint point in points)
        {
            most = Math.Max(most, point.Beyond(u));
        }

        return most;
    }

    private static double Phi(DesignPoint point) => StandardNormal.Upper(point.Beta);

    private static bool IsSame(DesignPoint a, DesignPoint b) =>
        PointVectors.Distance(a.U, b.U) < LeastDistance
        || PointVectors.Dot(a.Alpha, b.Alpha) > Math.Cos(LeastAngleDegrees * Math.PI / 180);
}
