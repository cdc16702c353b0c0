using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class VectorColumnsTests
{
    // Lengths on both sides of whole registers.
    public static TheoryData<int> Lengths => [0, 1, 7, 8, 9, 16, 31];

    [Theory]
    [MemberData(nameof(Lengths))]
    public void Columns_are_worked_on_as_one_number_after_the_other(int length)
    {
        double[] x = [.. Enumerable.Range(0, length).Select(i => 0.37 * i - 2)];
        double[] y = [.. Enumerable.Range(0, length).Select(i => 1.5 - 0.11 * i)];
        var to = new double[length];

        VectorColumns.Scale(x, 3, to);
        Assert.Equal(x.Select(v => 3 * v), to);
        VectorColumns.ScaledProduct(x, y, 3, to);
        Assert.Equal(x.Zip(y, (a, b) => 3 * a * b), to);
        VectorColumns.Quotient(x, y, to);
        Assert.Equal(x.Zip(y, (a, b) => a / b), to);
        VectorColumns.Line(x, 3, 0.25, to);
        Assert.Equal(x.Select(v => 0.25 + 3 * v), to);
        double[] sum = [.. y];
        VectorColumns.Add(x, sum);
        Assert.Equal(x.Zip(y, (a, b) => a + b), sum);
        VectorColumns.Clamp(sum, -0.5, 1);
        Assert.Equal(x.Zip(y, (a, b) => Math.Clamp(a + b, -0.5, 1)), sum);
    }

    [Theory]
    [MemberData(nameof(Lengths))]
    public void The_exponential_is_that_of_the_library(int length)
    {
        double[] x = [.. Enumerable.Range(0, length).Select(i => 44.3 * i - 699)];
        var to = new double[length];
        VectorColumns.ScaledExp(x, 1, 2, to);
        for (int i = 0; i < length; i++)
            Assert.InRange(to[i] / (2 * Math.Exp(x[i])), 1 - 1e-15, 1 + 1e-15);
    }

    [Fact]
    public void The_exponential_over_and_underflows_as_the_librarys_and_neighbours_do_not_matter()
    {
        double[] x = [1e4, double.PositiveInfinity, -1e4, double.NegativeInfinity, double.NaN, 705, -720, 0.1];
        var to = new double[x.Length];
        var alone = new double[1];
        VectorColumns.ScaledExp(x, 1, 1, to);
        VectorColumns.ScaledExp([0.1], 1, 1, alone);
        Assert.Equal([double.PositiveInfinity, double.PositiveInfinity, 0, 0, double.NaN], to[..5]);
        Assert.InRange(to[5] / Math.Exp(705), 1 - 1e-14, 1 + 1e-14);
        Assert.InRange(to[6] / Math.Exp(-720), 1 - 1e-7, 1 + 1e-7); // no longer a normal number
        Assert.Equal(alone[0], to[7]);
    }
}
