using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics;

/// <summary>
/// Sums over columns some of whose elements are infinite, or come to nothing: only what is finite counts. Eight rows at a time.
/// </summary>
internal static class FiniteColumns
{
    private static Vector512<double> Infinity => Vector512.Create(double.PositiveInfinity);

    /// <summary>Fills <paramref name="y"/> with 1/x where that and x are finite, NaN elsewhere.</summary>
    /// <returns>How many x are finite, 0 among them.</returns>
    public static long Inverse(ReadOnlySpan<double> x, Span<double> y)
    {
        long finite = 0;
        for (int i = 0; i < x.Length; i++)
        {
            finite += double.IsFinite(x[i]) ? 1 : 0;
            double inverse = 1 / x[i];
            y[i] = double.IsFinite(x[i]) && double.IsFinite(inverse) ? inverse : double.NaN;
        }

        return finite;
    }

    /// <summary>The sum of the products <c>x[i] y[i]</c> that are finite, and of their squares.</summary>
    public static (double Sum, double Squares) SumsOfProducts(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        int width = Vector512<double>.Count;
        Vector512<double> sums = Vector512<double>.Zero;
        Vector512<double> sumsOfSquares = Vector512<double>.Zero;
        int i = 0;
        for (; i <= x.Length - width; i += width)
        {
            Vector512<double> product = Vector512.Create(x.Slice(i, width)) * Vector512.Create(y.Slice(i, width));
            product = Vector512.ConditionalSelect(Vector512.LessThan(Vector512.Abs(product), Infinity), product, Vector512<double>.Zero);
            sums += product;
            sumsOfSquares += product * product;
        }

        double sum = Vector512.Sum(sums);
        double squares = Vector512.Sum(sumsOfSquares);
        for (; i < x.Length; i++)
        {
            double product = x[i] * y[i];
            product = double.IsFinite(product) ? product : 0;
            sum += product;
            squares += product * product;
        }

        return (sum, squares);
    }
}
