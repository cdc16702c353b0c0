namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>A point of the limit surface that is, in its surroundings, the closest to the origin: u = beta alpha.</summary>
/// <param name="U">The point, in standard normals.</param>
/// <param name="Beta">Its distance from the origin; negative where the origin itself fails. Phi(-beta) is the first-order failure
/// probability.</param>
/// <param name="Alpha">The unit vector toward failure: minus the gradient of the limit state over its length.</param>
/// <param name="IsApproximate">Whether the search did not converge there and the point only stands in for one
/// (<see cref="NearestFailing"/>).</param>
internal sealed record DesignPoint(double[] U, double Beta, double[] Alpha, bool IsApproximate = false)
{
    /// <summary>A failing point near the origin in the place of a design point.</summary>
    public static DesignPoint Approximate(double[] u)
    {
        double norm = PointVectors.Norm(u);
        return new DesignPoint(u, norm, norm > 0 ? PointVectors.Scaled(u, 1 / norm) : u, IsApproximate: true);
    }

    /// <summary>
    /// How far <paramref name="u"/> lies beyond the plane that touches the limit surface here; negative on the safe side.
    /// </summary>
    public double Beyond(ReadOnlySpan<double> u) => PointVectors.Dot(Alpha, u) - Beta;
}
