using AxleRisk.Core.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Distributions;

/// <summary>
/// A quantile that has to be solved for, tabulated over the normal score: polynomials through the Chebyshev points of short
/// parts of the axis (Trefethen 2013, Approximation Theory and Approximation Practice, chapters 2 to 4). A cell of the table is
/// made when a score first falls into it, its parts halved until they meet the solved quantile to rounding; where they never
/// come within <see cref="Tolerance"/>, the cell goes on solving. A value depends on its score alone.
/// </summary>
/// <param name="solve">The quantile, on a scale on which it is smooth and finite, from its lower and its upper tail.</param>
internal sealed class TabledQuantile(Func<double, double, double> solve)
{
    /// <summary>
    /// The greatest difference from the solved quantile u, times 1 + |u|; met at the ends and the middle of each part, where an
    /// error would be greatest.
    /// </summary>
    public const double Tolerance = 1e-10;

    /// <summary>An error that is no more than rounding.</summary>
    private const double Rounding = 1e-14;

    /// <summary>The score of the least tail with all its digits: Phi(-37.5) = 5e-308.</summary>
    private const double Reach = 37.5;

    private const int CellsOfUnit = 2;
    private const int Cells = (int)(2 * Reach) * CellsOfUnit;
    private const int Terms = 8;
    private const int MostParts = 1024;

    private static readonly double[] Points = [.. Enumerable.Range(0, Terms).Select(j => Math.Cos((j + 0.5) * Math.PI / Terms))];
    private static readonly Matrix<double> FromValues =
        Matrix<double>.Build.Dense(Terms, Terms, (point, power) => Math.Pow(Points[point], power)).Inverse();

    /// <summary>
    /// By cell: the coefficients of each part's polynomial over -1 to 1, lowest power first; empty where it has to be solved.
    /// </summary>
    private readonly double[]?[] cells = new double[Cells][];

    /// <summary>Fills the quantiles of scores, which count as +-37.5 beyond it; infinite ones and NaN stay.</summary>
    /// <param name="z">The scores.</param>
    /// <param name="u">Takes the quantiles, on the solved scale; as long as <paramref name="z"/>, and may be the same memory.</param>
    public void Fill(ReadOnlySpan<double> z, Span<double> u)
    {
        for (int i = 0; i < z.Length; i++)
        {
            u[i] = double.IsFinite(z[i]) ? At(Math.Clamp(z[i], -Reach, Reach)) : z[i];
        }
    }

    private double At(double score)
    {
        double place = (score + Reach) * CellsOfUnit;
        int cell = Math.Min((int)place, Cells - 1);
        double[] coefficients = Volatile.Read(ref cells[cell]) ?? Make(cell); // threads that meet here make the same
        int parts = coefficients.Length / Terms;
        if (parts == 0)
        {
            return Solved(score);
        }

        double inCell = (place - cell) * parts;
        int part = Math.Min((int)inCell, parts - 1);
        return Polynomial(coefficients.AsSpan(part * Terms, Terms), (2 * (inCell - part)) - 1);
    }

    private static double Polynomial(ReadOnlySpan<double> c, double s)
    {
        double sum = Math.FusedMultiplyAdd(c[7], s, c[6]);
        sum = Math.FusedMultiplyAdd(sum, s, c[5]);
        sum = Math.FusedMultiplyAdd(sum, s, c[4]);
        sum = Math.FusedMultiplyAdd(sum, s, c[3]);
        sum = Math.FusedMultiplyAdd(sum, s, c[2]);
        sum = Math.FusedMultiplyAdd(sum, s, c[1]);
        return Math.FusedMultiplyAdd(sum, s, c[0]);
    }

    private double[] Make(int cell)
    {
        double[] made = [];
        double before = double.PositiveInfinity;
        for (int parts = 1; parts <= MostParts && made.Length == 0; parts *= 2)
        {
            double[] coefficients = new double[parts * Terms];
            double error = 0;
            for (int part = 0; part < parts; part++)
            {
                double half = 0.5 / parts / CellsOfUnit;
                double middle = ((double)cell / CellsOfUnit) - Reach + (((2 * part) + 1) * half);
                error = Math.Max(error, Fit(middle, half, coefficients.AsSpan(part * Terms, Terms)));
            }

            // Halved parts gain a factor of 256, until what is left is the rounding of the solved values themselves.
            if (error <= Rounding || (error <= Tolerance && error > before / 4))
            {
                made = coefficients;
            }

            before = error;
        }

        Volatile.Write(ref cells[cell], made);
        return made;
    }

    /// <summary>The polynomial of a part, and its greatest error over 1 + |u|.</summary>
    private double Fit(double middle, double half, Span<double> coefficients)
    {
        double ofMiddle = Solved(middle);
        FromValues.Multiply(Vector<double>.Build.Dense(Terms, j => Solved(middle + (half * Points[j])) - ofMiddle)).AsArray()
            .CopyTo(coefficients);
        coefficients[0] += ofMiddle;
        double error = 0;
        foreach (int s in (ReadOnlySpan<int>)[-1, 0, 1])
        {
            double solved = Solved(middle + (half * s));
            error = Math.Max(error, Math.Abs(Polynomial(coefficients, s) - solved) / (1 + Math.Abs(solved)));
        }

        return double.IsNaN(error) ? double.PositiveInfinity : error;
    }

    private double Solved(double score)
    {
        double tail = StandardNormal.Cumulative(-Math.Abs(score));
        return score < 0 ? solve(tail, 1 - tail) : solve(1 - tail, tail);
    }
}
