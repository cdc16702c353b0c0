using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// How likely a look finds the crack, over the fraction of life used: of a smooth curve by a table and the cubic through four of its
/// points, within 1e-6; of a steep one or one with corners directly. A thread's buffer.
/// </summary>
/// <param name="look">The detection curve.</param>
internal sealed class DetectionTable(DetectionCurve look)
{
    private const int Cells = 512;
    private const double Steep = 0.2;

    private readonly double[] values = new double[Cells + 3]; // one more at each end
    private CrackDepth depth;
    private bool isDirect = true;

    /// <summary>The detection curve.</summary>
    public DetectionCurve Look => look;

    /// <summary>The fraction of life at which half of the looks find the crack.</summary>
    public double Fraction50 { get; private set; }

    /// <summary>Takes over the depth of a vehicle's crack.</summary>
    public void Fill(CrackDepth of)
    {
        depth = of;
        Fraction50 = of.FractionAt(look.A50Mm);
        isDirect = of.IsOwn || look.Sigma < Steep;
        for (int i = 0; !isDirect && i <= Cells; i++)
        {
            values[i + 1] = look.Of(of.At((double)i / Cells));
        }

        // The cubic through the ends goes on beyond them.
        values[0] = (4 * values[1]) - (6 * values[2]) + (4 * values[3]) - values[4];
        values[^1] = (4 * values[^2]) - (6 * values[^3]) + (4 * values[^4]) - values[^5];
    }

    /// <summary>The probability of finding it at a fraction of life from 0 to 1.</summary>
    public double Of(double fraction)
    {
        if (isDirect)
        {
            return look.Of(depth.At(fraction));
        }

        double place = Math.Min(fraction, 1) * Cells;
        int cell = Math.Min((int)place, Cells - 1);
        double t = place - cell, a = values[cell], b = values[cell + 1], c = values[cell + 2], d = values[cell + 3];
        return b + (t * (c - b)) - (t * (1 - t) / 6 * (((2 - t) * (a - (2 * b) + c)) + ((1 + t) * (b - (2 * c) + d))));
    }
}
