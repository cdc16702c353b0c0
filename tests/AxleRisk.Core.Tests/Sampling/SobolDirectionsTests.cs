using AxleRisk.Core.Sampling;
using Xunit;

namespace AxleRisk.Core.Tests.Sampling;

public class SobolDirectionsTests
{
    // Points of the sequence in Gray-code order from the published numbers of Joe and Kuo; equal to scipy 1.10, exact.
    [Theory]
    [InlineData(1, new[] { .5, .5, .5, .5, .5, .5 })]
    [InlineData(2, new[] { .75, .25, .25, .25, .75, .75 })]
    [InlineData(3, new[] { .25, .75, .75, .75, .25, .25 })]
    [InlineData(4, new[] { .375, .375, .625, .875, .375, .125 })]
    [InlineData(5, new[] { .875, .875, .125, .375, .875, .625 })]
    [InlineData(6, new[] { .625, .125, .875, .625, .625, .875 })]
    [InlineData(7, new[] { .125, .625, .375, .125, .125, .375 })]
    [InlineData(100, new[] { .4140625, .2578125, .7734375, .7265625, .8828125, .7421875, .0234375, .4765625, .6328125, .6953125 })]
    [InlineData(1000, new[]
    {
        .2197265625, .0966796875, .5185546875, .6767578125, .2802734375, .9072265625, .0458984375, .8994140625, .5009765625,
        .0693359375,
    })]
    public void Unscrambled_points_equal_the_published_ones(long number, double[] point) =>
        Assert.Equal(point, point.Select((_, d) => SobolPoints.Plain(d, number)));

    // d, s, a, m of the published table (seen).
    [Theory]
    [InlineData(2, new ushort[] { 1, 0, 1 })]
    [InlineData(3, new ushort[] { 2, 1, 1, 3 })]
    [InlineData(4, new ushort[] { 3, 1, 1, 3, 1 })]
    [InlineData(5, new ushort[] { 3, 2, 1, 1, 1 })]
    [InlineData(6, new ushort[] { 4, 1, 1, 1, 3, 3 })]
    [InlineData(7, new ushort[] { 4, 4, 1, 3, 5, 13 })]
    [InlineData(8, new ushort[] { 5, 2, 1, 1, 5, 5, 17 })]
    [InlineData(9, new ushort[] { 5, 4, 1, 1, 5, 5, 5 })]
    [InlineData(10, new ushort[] { 5, 7, 1, 1, 7, 11, 19 })]
    public void Rows_equal_the_published_table(int dimension, ushort[] row) => Assert.Equal(row, JoeKuoTable.Rows[dimension - 2]);

    [Fact]
    public void Direction_numbers_are_odd_and_below_two_to_their_index()
    {
        Assert.Equal(95, JoeKuoTable.Rows.Length);
        Assert.All(JoeKuoTable.Rows, row =>
        {
            Assert.Equal(row[0] + 2, row.Length);
            for (int i = 1; i <= row[0]; i++)
            {
                Assert.Equal(1, row[i + 1] % 2);
                Assert.InRange(row[i + 1], 1, (1 << i) - 1);
            }
        });
    }

    [Fact]
    public void Polynomials_are_primitive_and_all_different()
    {
        Assert.All(JoeKuoTable.Rows, row => Assert.Equal((1 << row[0]) - 1, OrderOfX(Polynomial(row), row[0])));
        Assert.Equal(JoeKuoTable.Rows.Length, JoeKuoTable.Rows.Select(Polynomial).Distinct().Count());
    }

    private static int Polynomial(ushort[] row) => (1 << row[0]) | (row[1] << 1) | 1;

    // The order of x modulo a polynomial over the field of two elements; 2^s - 1 means primitive.
    private static int OrderOfX(int polynomial, int degree)
    {
        int power = 1, order = 0;
        do
        {
            power <<= 1;
            if (power >> degree != 0)
            {
                power ^= polynomial;
            }

            order++;
        }
        while (power != 1 && order < 1 << degree);
        return order;
    }
}
