using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// The probability that a look finds a crack: lognormal in its depth, the hit/miss model of MIL-HDBK-1823A. It belongs to a procedure
/// and to the person who follows it.
/// </summary>
/// <param name="A50Mm">The depth that is found in half of the looks, mm.</param>
/// <param name="A90Mm">The depth that is found in nine of ten, mm, not below the other; where they are equal it is a step.</param>
public sealed record DetectionCurve(double A50Mm, double A90Mm)
{
    private const double Score90 = 1.2815515655446004; // Phi(1.28...) = 0.9

    /// <summary>The standard deviation of the logarithm of the depth that is just found.</summary>
    public double Sigma { get; } = Math.Log(A90Mm / A50Mm) / Score90;

    /// <summary>The probability of finding a crack of a depth, mm.</summary>
    public double Of(double depthMm) => Sigma > 0 ? StandardNormal.Cumulative(Math.Log(depthMm / A50Mm) / Sigma) : depthMm >= A50Mm ? 1 : 0;

    /// <summary>The probability of finding each of eight cracks, given ln of the depths, mm, or of missing it.</summary>
    internal Vector512<double> Of(Vector512<double> lnDepth, bool isFound)
    {
        Vector512<double> above = lnDepth - Vector512.Create(Math.Log(A50Mm));
        if (Sigma > 0)
        {
            return VectorNormal.Upper(above * ((isFound ? -1 : 1) / Sigma));
        }

        Vector512<double> found = Vector512.GreaterThanOrEqual(above, Vector512<double>.Zero);
        return (isFound ? found : ~found) & Vector512<double>.One;
    }
}
