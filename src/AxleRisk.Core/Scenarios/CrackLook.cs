using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Scenarios;

/// <summary>A look for the crack that was done on one vehicle, and what was seen.</summary>
/// <param name="Method">The way of looking.</param>
/// <param name="Km">The distance at which it was done, km, above 0.</param>
/// <param name="IsFound">Whether the crack was found.</param>
/// <param name="DepthMm">The depth that was measured, mm; null where it was not.</param>
/// <param name="StandardDeviationMm">The standard deviation of the error of that, mm.</param>
public sealed record CrackLook(InspectionMethod Method, double Km, bool IsFound, double? DepthMm, double StandardDeviationMm)
{
    /// <summary>How likely it is to see what was seen on a crack of some depth, mm; up to a constant.</summary>
    public double Likelihood(double depthMm)
    {
        double found = Method.Detection.Of(depthMm);
        if (!IsFound)
        {
            return 1 - found;
        }

        double error = DepthMm is { } read ? (read - depthMm) / StandardDeviationMm : 0;
        return found * Math.Exp(-0.5 * error * error);
    }

    /// <summary>The same of eight cracks, given ln of their depths.</summary>
    internal Vector512<double> Likelihood(Vector512<double> lnDepth)
    {
        Vector512<double> likelihood = Method.Detection.Of(lnDepth, IsFound);
        if (!IsFound || DepthMm is not { } read)
        {
            return likelihood;
        }

        Vector512<double> error = (Vector512.Create(read) - VectorExponential.Of(lnDepth)) * (1 / StandardDeviationMm);
        return likelihood * VectorExponential.Of(-0.5 * error * error);
    }
}
