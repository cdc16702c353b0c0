using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class FiniteColumnsTests
{
    [Fact]
    public void Only_what_is_finite_counts_in_sums_of_products()
    {
        double[] damage = [1, 2, 0, double.PositiveInfinity, 4, double.NaN, 5, 8, 10];
        double[] part = [1, 1, 0, double.PositiveInfinity, 1, 1, 0, 2, 5];
        var inverse = new double[damage.Length];
        Assert.Equal(7, FiniteColumns.Inverse(damage, inverse));
        (double sum, double squares) = FiniteColumns.SumsOfProducts(part, inverse);
        Assert.Equal(1 + 0.5 + 0.25 + 0.25 + 0.5, sum, 15);
        Assert.Equal(1 + 0.25 + 0.0625 + 0.0625 + 0.25, squares, 15);
    }
}
