namespace AxleRisk.Core.Numerics;

/// <summary>The exponential of a small square matrix.</summary>
internal static class MatrixExponential
{
    private const int Terms = 20;

    /// <summary>
    /// exp(<paramref name="matrix"/>) by scaling, Taylor series and squaring (Moler and Van Loan 1978, method 3; from memory). The series
    /// runs on a matrix of norm below 1/4, so that the terms left out are below 1e-30 of the result.
    /// </summary>
    public static double[,] Of(double[,] matrix)
    {
        int size = matrix.GetLength(0);
        int squarings = Math.Max(0, (int)Math.Ceiling(Math.Log2(4 * Norm(matrix) + double.Epsilon)));
        double scale = Math.ScaleB(1, -squarings);
        var term = new double[size, size];
        var sum = new double[size, size];
        for (int i = 0; i < size; i++)
        {
            term[i, i] = sum[i, i] = 1;
        }

        for (int k = 1; k <= Terms; k++)
        {
            term = Product(term, matrix, scale / k);
            for (int i = 0; i < size; i++)
            {
                for (int j = 0; j < size; j++)
                {
                    sum[i, j] += term[i, j];
                }
            }
        }
        for (int k = 0; k < squarings; k++)
        {
            sum = Product(sum, sum, 1);
        }

        return sum;
    }

    private static double Norm(double[,] a)
    {
        double norm = 0;
        for (int j = 0; j < a.GetLength(1); j++)
        {
            double column = 0;
            for (int i = 0; i < a.GetLength(0); i++)
            {
                column += Math.Abs(a[i, j]);
            }

            norm = Math.Max(norm, column);
        }
        return norm;
    }

    private static double[,] Product(double[,] a, double[,] b, double scale)
    {
        int size = a.GetLength(0);
        var product = new double[size, size];
        for (int i = 0; i < size; i++)
        {
            for (int k = 0; k < size; k++)
            {
                double left = scale * a[i, k];
                for (int j = 0; j < size; j++)
                {
                    product[i, j] += left * b[k, j];
                }
            }
        }
        return product;
    }
}
