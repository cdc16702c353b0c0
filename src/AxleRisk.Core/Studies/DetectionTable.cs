using System.Runtime.Intrinsics;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// How likely a look finds the crack, over the fraction of life used: of a smooth curve by a table and the cubic through four of its
/// points, within 1e-6; of a steep one or one with corners directly.
/// </summary>
internal sealed class DetectionTable
{
    private const int Cells = 512;
    private const double Steep = 0.2;

    private readonly DetectionCurve look;
    private readonly CrackDepth depth;
    private readonly double[] values = []; // one more at each end

    /// <summary>Makes the table.</summary>
    /// <param name="look">The detection curve.</param>
    /// <param name="depth">The depth of a vehicle's crack.</param>
    public DetectionTable(DetectionCurve look, CrackDepth depth)
    {
        (this.look, this.depth) = (look, depth);
        Fraction50 = depth.FractionAt(look.A50Mm);
        if (depth.IsOwn || look.Sigma < Steep)
        {
            return;
        }

        values = new double[Cells + 3];
        for (int i = 0; i < Cells; i += Vector512<double>.Count)
        {
            Vector512<double> fraction = (Vector512.Create((double)i) + Vector512<double>.Indices) * (1.0 / Cells);
            look.Of(depth.LnAt(fraction), isFound: true).CopyTo(values, i + 1);
        }

        values[Cells + 1] = look.Of(depth.WallMm);

        // The cubic through the ends goes on beyond them.
        values[0] = (4 * values[1]) - (6 * values[2]) + (4 * values[3]) - values[4];
        values[^1] = (4 * values[^2]) - (6 * values[^3]) + (4 * values[^4]) - values[^5];
    }

    /// <summary>The fraction of life at which half of the looks find the crack.</summary>
    public double Fraction50 { get; }

    /// <summary>The probability of finding it at a fraction of life from 0 to 1.</summary>
    public double Of(double fraction)
    {
        if (values.Length == 0)
        {
            return look.Of(depth.At(fraction));
        }

        double place = Math.Min(fraction, 1) * Cells;
        int cell = Math.Min((int)place, Cells - 1);
        double t = place - cell, a = values[cell], b = values[cell + 1], c = values[cell + 2], d = values[cell + 3];
        return b + (t * (c - b)) - (t * (1 - t) / 6 * (((2 - t) * (a - (2 * b) + c)) + ((1 + t) * (b - (2 * c) + d))));
    }
}
