using AxleRisk.Core.Damage.Rides;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// The ride as <c>x' = A x + b (u + et) + g es</c>: x = (zs, zs', zu, zu'), u the road's part of the tyre force, et and es what
/// the tyre and
/// the suspension carry beyond the linear law, N, both counted as they act on the axle, upward.
/// </summary>
internal static class RideMatrix
{
    /// <summary>The number of states.</summary>
    public const int States = 4;

    /// <summary>The matrix A.</summary>
    public static double[,] System(in RideParameters p)
    {
        (double ms, double mu, double ks, double cs, double kt, double ct, _) = p;
        return new[,]
        {
            { 0, 1, 0, 0 },
            { -ks / ms, -cs / ms, ks / ms, cs / ms },
            { 0, 0, 0, 1 },
            { ks / mu, cs / mu, -(ks + kt) / mu, -(cs + ct) / mu },
        };
    }

    /// <summary>The column b: a force of the tyre on the axle.</summary>
    public static double[] Tyre(in RideParameters p) => [0, 0, 0, 1 / p.UnsprungKg];

    /// <summary>The column g: a force between body and axle, upward on the axle.</summary>
    public static double[] Suspension(in RideParameters p) => [0, -1 / p.SprungKg, 0, 1 / p.UnsprungKg];
}
