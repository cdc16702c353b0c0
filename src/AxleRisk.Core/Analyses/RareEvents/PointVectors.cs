namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>Arithmetic of short vectors.</summary>
internal static class PointVectors
{
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    public static double Norm(ReadOnlySpan<double> a) => Math.Sqrt(Dot(a, a));

    public static double Distance(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }

        return Math.Sqrt(sum);
    }

    public static double[] Scaled(ReadOnlySpan<double> a, double factor)
    {
        double[] result = a.ToArray();
        for (int i = 0; i < result.Length; i++)
        {
            result[i] *= factor;
        }

        return result;
    }

    /// <summary>a + step * d.</summary>
    public static double[] Moved(ReadOnlySpan<double> a, double step, ReadOnlySpan<double> d)
    {
        double[] result = a.ToArray();
        for (int i = 0; i < result.Length; i++)
        {
            result[i] += step * d[i];
        }

        return result;
    }

    /// <summary>One row of columns.</summary>
    public static double[] Row(double[][] columns, int row) => Array.ConvertAll(columns, column => column[row]);

    /// <summary>Points as columns, by coordinate and row.</summary>
    public static double[][] Columns(IReadOnlyList<double[]> rows, int dimension)
    {
        var columns = new double[dimension][];
        for (int i = 0; i < dimension; i++)
        {
            columns[i] = [.. rows.Select(row => row[i])];
        }

        return columns;
    }
}
