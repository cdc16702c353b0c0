using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// A stand-in for a design point where gradients lead nowhere (a corner, a step): from the failing sample nearest the
/// origin, random neighbours of shrinking spread, each time on from the nearest that fails.
/// </summary>
internal static class NearestFailing
{
    /// <summary>The evaluations one approach takes.</summary>
    public const int Evaluations = Neighbours * 4;

    /// <summary>A failing point this far on the safe side of all touching planes is clearly not explained by them.</summary>
    public const double Clear = 0.5;

    private const int Neighbours = 64;
    private static readonly double[] Spreads = [1, 0.5, 0.25, 0.125];

    /// <summary>Approaches the origin among the failing points that the known design points do not explain.</summary>
    /// <param name="state">The limit state, without a normal part of its own.</param>
    /// <param name="known">The design points found so far.</param>
    /// <param name="failing">Failing samples not explained by them, at least one.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="stream">The name of the streams, of this approach alone.</param>
    public static DesignPoint Approach(
        LimitState state, DesignPointSet known, IReadOnlyList<double[]> failing, ulong seed, string stream)
    {
        double[] nearest = failing.MinBy(u => PointVectors.Norm(u))!;
        double[][] u = Workspace.Columns(state.Dimension, Neighbours);
        var g = new double[Neighbours];
        for (int round = 0; round < Spreads.Length; round++)
        {
            NormalDraws.Fill(seed, $"{stream}/{round}", 0, Neighbours, u);
            for (int i = 0; i < u.Length; i++)
            {
                for (int row = 0; row < Neighbours; row++)
                {
                    u[i][row] = nearest[i] + (Spreads[round] * u[i][row]);
                }
            }

            state.Evaluate(u, Neighbours, g);
            nearest = Enumerable.Range(0, Neighbours).Where(row => g[row] <= 0).Select(row => PointVectors.Row(u, row))
                .Where(x => known.Beyond(x) < -Clear)
                .Append(nearest).MinBy(x => PointVectors.Norm(x))!;
        }

        return DesignPoint.Approximate(nearest);
    }
}
