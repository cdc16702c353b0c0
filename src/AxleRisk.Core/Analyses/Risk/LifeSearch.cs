using AxleRisk.Core.Numerics;
using MathNet.Numerics.RootFinding;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// The distance by which a share has failed, by Brent's method on the probit scale: on it the curve is nearly straight, and a few
/// evaluations find what halving takes dozens for.
/// </summary>
internal static class LifeSearch
{
    /// <summary>The search ends where its bracket is this narrow in ln km.</summary>
    private const double Tolerance = 1e-9;

    private const int MostSteps = 200;

    /// <summary>A probit beyond which a probability is as good as 0 or 1.</summary>
    private const double Farthest = 38;

    private static readonly double Least = Math.Log(1e-18), Most = Math.Log(1e18);

    /// <summary>The ln of the distance; NaN where there is none from 1e-18 to 1e18 km.</summary>
    /// <param name="failedBy">The share failed by the ln of a distance, rising with it; it may jump.</param>
    /// <param name="share">The share.</param>
    public static double LnKmAt(Func<double, double> failedBy, double share)
    {
        if (!(share > 0 && share < 1))
        {
            return double.NaN;
        }

        double target = StandardNormal.Quantile(share);
        double Off(double lnKm) => Math.Clamp(StandardNormal.Quantile(failedBy(lnKm)), -Farthest, Farthest) - target;
        return Off(Most) >= 0 && Off(Least) <= 0 && Brent.TryFindRoot(Off, Least, Most, Tolerance, MostSteps, out double lnKm)
            ? lnKm : double.NaN;
    }
}
