using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>Cubic Hermite interpolation between even nodes.</summary>
internal static class Cubic
{
    private const double Least = -12;
    private const int PerUnit = 32;
    private static readonly (double Value, double Slope)[] Normal = [.. Enumerable.Range(0, (21 * PerUnit) + 1).Select(i =>
    {
        double z = Least + (i / (double)PerUnit);
        return (StandardNormal.Cumulative(z), StandardNormal.Density(z) / PerUnit);
    })];

    /// <summary>The node below a point and the point's part of the way to the next; points beyond the ends count as them.</summary>
    public static (int Node, double Part) Place(double x, double least, int perUnit, int nodes)
    {
        double place = Math.Clamp((x - least) * perUnit, 0, nodes - 1);
        int node = Math.Min((int)place, nodes - 2);
        return (node, place - node);
    }

    /// <summary>The value a part <paramref name="t"/> of the way between two nodes, of which the slopes are times the step.</summary>
    public static double At(double t, (double Value, double Slope) a, (double Value, double Slope) b)
    {
        double s = 1 - t;
        return (s * s * (((1 + (2 * t)) * a.Value) + (t * a.Slope))) + (t * t * (((1 + (2 * s)) * b.Value) - (s * b.Slope)));
    }

    /// <summary>Phi, within 2e-9, and within 4e-6 of itself down to z = -6; 0 below -12 and 1 above 9.</summary>
    public static double Phi(double z)
    {
        (int node, double t) = Place(z, Least, PerUnit, Normal.Length);
        return At(t, Normal[node], Normal[node + 1]);
    }
}
