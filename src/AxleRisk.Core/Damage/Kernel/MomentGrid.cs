using AxleRisk.Core.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Damage;

/// <summary>
/// Points evenly spaced in ln f with the weights of the four moments, in single precision, and the enveloping table on the same spacing.
/// Frequencies are in units of <see cref="CentreHz"/>, so that no power of them leaves the range of single precision.
/// </summary>
internal sealed class MomentGrid
{
    /// <summary>The unit of frequency, Hz: the geometric mean of the limits.</summary>
    public static readonly double CentreHz = Math.Sqrt(FrequencyGrid.LowestHz * FrequencyGrid.HighestHz);

    // Points at either end whose weights make up for the wider step.
    private const int EndPoints = 8;

    // zeta(-p) for odd p: the coefficients of the Euler-Maclaurin formula.
    private static readonly double[] Zeta = [0, -1.0 / 12, 0, 1.0 / 120, 0, -1.0 / 252, 0, 1.0 / 240];

    private MomentGrid(int points, int phases, double greatestShift)
    {
        Points = points;
        double step = Math.Log(FrequencyGrid.HighestHz / FrequencyGrid.LowestHz) / (points - 1);
        SquaredFrequencies = new(points);
        LogFrequencies = new(points);
        Weights = new(4 * points);
        double[] ends = EndWeights(step);
        for (int i = 0; i < points; i++)
        {
            double f = FrequencyGrid.LowestHz / CentreHz * Math.Exp(step * i);
            double weight = CentreHz * f * step * (1 + EndWeight(ends, i) + EndWeight(ends, points - 1 - i));
            SquaredFrequencies.At(i) = (float)(f * f);
            LogFrequencies.At(i) = (float)Math.Log(f);
            // The gain's factor x^2 = f^4, times the road's f^-2, times f^k.
            Weights.At(i) = (float)(weight * Math.Pow(f, 2));
            Weights.At(points + i) = (float)(weight * Math.Pow(f, 3));
            Weights.At(2 * points + i) = (float)(weight * Math.Pow(f, 4));
            Weights.At(3 * points + i) = (float)(weight * Math.Pow(f, 6));
        }

        Table = new EnvelopingTable(points, step, phases, greatestShift);
    }

    /// <summary>The oracle's own points.</summary>
    public static MomentGrid Full { get; } = new(FrequencyGrid.Points, 16, 2);

    /// <summary>Half as many, for the rides and legs that <see cref="ReducedGridRule"/> admits.</summary>
    public static MomentGrid Reduced { get; } = new(FrequencyGrid.Points / 2, 32, ReducedGridRule.GreatestShiftSeconds);

    /// <summary>The number of points.</summary>
    public int Points { get; }

    /// <summary>The squared frequencies.</summary>
    public AlignedBuffer<float> SquaredFrequencies { get; }

    /// <summary>The logarithms of the frequencies.</summary>
    public AlignedBuffer<float> LogFrequencies { get; }

    /// <summary>Weights of the moments 0, 1, 2 and 4, one row of points after the other.</summary>
    public AlignedBuffer<float> Weights { get; }

    /// <summary>The enveloping on this spacing.</summary>
    public EnvelopingTable Table { get; }

    private static double EndWeight(double[] ends, int fromEnd) => fromEnd < ends.Length ? ends[fromEnd] : 0;

    // The corrections to uniform weights that make the wider rule sum every power of the distance from the end, up to the seventh, as the
    // oracle's trapezoid rule does. That rule's own end error is part of the definition of its moments, so it is kept.
    private static double[] EndWeights(double step)
    {
        double finer = Math.Log(FrequencyGrid.HighestHz / FrequencyGrid.LowestHz) / (FrequencyGrid.Points - 1) / step;
        if (finer == 1)
            return [-0.5];
        Matrix<double> powers = Matrix<double>.Build.Dense(EndPoints, EndPoints, (p, j) => Math.Pow(j, p));
        Vector<double> sums = Vector<double>.Build.Dense(EndPoints, p => p == 0 ? -0.5 : -Zeta[p] * (1 - Math.Pow(finer, p + 1)));
        return [.. powers.Solve(sums)];
    }
}
