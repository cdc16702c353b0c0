using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// Depth of the crack over the fraction of life used, of one vehicle: the law of Paris and Erdogan (1963) with a constant geometry factor,
/// <c>a(x) = [a0^(1-m/2) + x (af^(1-m/2) - a0^(1-m/2))]^(1/(1-m/2))</c>, whose constant is set so that the crack is through the wall at
/// the end of the S-N life; or the user's own curve.
/// </summary>
internal readonly record struct CrackDepth
{
    private readonly CrackCurve? own;
    private readonly double exponent;
    private readonly double from;
    private readonly double to;

    /// <summary>The law of Paris and Erdogan.</summary>
    /// <param name="initialMm">The initial depth a0, mm, below the wall.</param>
    /// <param name="wallMm">The wall af, mm.</param>
    /// <param name="exponent">The exponent m.</param>
    public CrackDepth(double initialMm, double wallMm, double exponent)
    {
        (InitialMm, WallMm) = (Math.Min(initialMm, wallMm), wallMm);
        double power = 1 - (exponent / 2);
        this.exponent = Math.Abs(power) < 1e-6 ? 0 : power; // near m = 2 the exponential is the better number
        (from, to) = this.exponent == 0 ? (Math.Log(InitialMm), Math.Log(wallMm))
            : (Math.Pow(InitialMm, this.exponent), Math.Pow(wallMm, this.exponent));
    }

    /// <summary>A curve of the user's own.</summary>
    public CrackDepth(CrackCurve own)
    {
        this.own = own;
        (InitialMm, WallMm) = (own.DepthsMm[0], own.DepthsMm[^1]);
    }

    /// <summary>Whether it is a curve of the user's own, which has corners.</summary>
    public bool IsOwn => own is not null;

    /// <summary>The depth of a new part, mm.</summary>
    public double InitialMm { get; }

    /// <summary>The depth at the end of life, mm.</summary>
    public double WallMm { get; }

    /// <summary>The depth at a fraction of life, mm; that of the end beyond 1.</summary>
    public double At(double fraction)
    {
        if (!(fraction < 1))
        {
            return WallMm;
        }

        if (own is not null)
        {
            int i = 1;
            while (fraction > own.Fractions[i])
            {
                i++;
            }

            return Between(fraction, own.Fractions[i - 1], own.Fractions[i], own.DepthsMm[i - 1], own.DepthsMm[i]);
        }

        double value = from + (fraction * (to - from));
        return exponent == 0 ? Math.Exp(value) : Math.Pow(value, 1 / exponent);
    }

    /// <summary>ln of the depth, mm, at eight fractions of life.</summary>
    public Vector512<double> LnAt(Vector512<double> fraction)
    {
        if (own is not null)
        {
            Span<double> each = stackalloc double[Vector512<double>.Count];
            fraction.CopyTo(each);
            foreach (ref double x in each)
            {
                x = Math.Log(At(x));
            }

            return Vector512.Create<double>(each);
        }

        Vector512<double> value = Vector512.Create(from) + (Vector512.Min(fraction, Vector512<double>.One) * (to - from));
        return exponent == 0 ? value : VectorLogarithm.Of(value) * (1 / exponent);
    }

    /// <summary>The fraction of life at which the crack has a depth; 0 below the initial depth, 1 from the last on.</summary>
    public double FractionAt(double depthMm)
    {
        if (!(depthMm > InitialMm))
        {
            return 0;
        }

        if (!(depthMm < WallMm))
        {
            return 1;
        }

        if (own is not null)
        {
            int i = 1;
            while (depthMm > own.DepthsMm[i])
            {
                i++;
            }

            return Between(depthMm, own.DepthsMm[i - 1], own.DepthsMm[i], own.Fractions[i - 1], own.Fractions[i]);
        }

        double value = exponent == 0 ? Math.Log(depthMm) : Math.Pow(depthMm, exponent);
        return Math.Clamp((value - from) / (to - from), 0, 1);
    }

    private static double Between(double x, double x0, double x1, double y0, double y1) => y0 + ((x - x0) / (x1 - x0) * (y1 - y0));
}
