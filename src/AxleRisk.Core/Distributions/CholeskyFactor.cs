using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Distributions;

/// <summary>The lower Cholesky factor of a correlation matrix.</summary>
internal static class CholeskyFactor
{
    /// <summary>The least square of a pivot: what is left of a factor's variance given the ones before it.</summary>
    private const double LeastPivot = 1e-10;

    /// <summary>
    /// The factor by rows, row i of length i + 1; null where the matrix is not positive definite. Exact zeros of the matrix
    /// stay exact as far as the factor has them, so uncorrelated factors keep a unit row.
    /// </summary>
    public static double[][]? Of(Matrix<double> matrix)
    {
        double[][] rows = new double[matrix.RowCount][];
        for (int i = 0; i < rows.Length; i++)
        {
            rows[i] = new double[i + 1];
            for (int j = 0; j < i; j++)
            {
                rows[i][j] = (matrix[i, j] - Dot(rows[i], rows[j], j)) / rows[j][j];
            }

            double pivot = matrix[i, i] - Dot(rows[i], rows[i], i);
            if (!(pivot > LeastPivot))
            {
                return null;
            }

            rows[i][i] = Math.Sqrt(pivot);
        }

        return rows;
    }

    private static double Dot(double[] a, double[] b, int count)
    {
        double sum = 0;
        for (int k = 0; k < count; k++)
        {
            sum += a[k] * b[k];
        }

        return sum;
    }
}
