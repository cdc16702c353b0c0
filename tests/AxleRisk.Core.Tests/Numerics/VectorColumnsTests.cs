using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
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
        {
            Assert.InRange(to[i] / (2 * Math.Exp(x[i])), 1 - 1e-15, 1 + 1e-15);
        }
    }

    // -ln of the upper tail of a lognormal, against the library's error function in both tails; beyond its reach by the asymptote
    // (DLMF 7.12.1).
    [Fact]
    public void The_hazard_of_a_lognormal_keeps_its_digits_in_both_tails()
    {
        double[] z = [.. Enumerable.Range(-370, 741).Select(i => 0.1 * i + 0.003), -1e-9, 0, 1e-9];
        var to = new double[z.Length];
        VectorColumns.LognormalHazard([.. z.Select(v => Math.Exp(v / 2))], 2, 0, to);
        for (int i = 0; i < z.Length; i++)
        {
            double at = 2 * Math.Log(Math.Exp(z[i] / 2));
            double expected = at < 0 ? -LogExp.LogP1(-StandardNormal.Cumulative(at))
                : at < 30 ? -Math.Log(StandardNormal.Upper(at))
                : at * at / 2 + Math.Log(at * Math.Sqrt(2 * Math.PI))
                    - LogExp.LogP1(-1 / (at * at) + 3 / Math.Pow(at, 4) - 15 / Math.Pow(at, 6));
            Assert.InRange(to[i], expected * (1 - 2e-12) - 1e-300, expected * (1 + 2e-12) + 1e-300);
        }

        VectorColumns.LognormalHazard([0, double.PositiveInfinity], 2, 0, to.AsSpan(0, 2));
        Assert.InRange(to[0], 0, 1e-300);
        Assert.Equal(double.PositiveInfinity, to[1]);
    }

    [Fact]
    public void The_hazard_of_a_Weibull_and_its_probability_are_the_scalar_ones()
    {
        double[] x = [-1, 0, 0.05, 0.0500001, 0.3, 1, 4, 20, 300, 1e5, double.PositiveInfinity];
        var to = new double[x.Length];
        foreach ((double shape, double scale) in new[] { (1.5, 4.26), (1.0, 2.0), (0.7, 3.0) })
        {
            VectorColumns.WeibullHazard(x, 0.05, scale, shape, to);
            for (int i = 0; i < x.Length; i++)
            {
                double expected = x[i] <= 0.05 ? 0 : Math.Pow((x[i] - 0.05) / scale, shape);
                Assert.True(to[i].Equals(expected) || Math.Abs(to[i] / expected - 1) < 2e-14, $"{x[i]}: {to[i]} and {expected}");
            }
        }

        double[] h = [0, 1e-300, 1e-18, 1e-9, 0.01, 0.2, 0.34, 0.35, 0.7, 1, 5, 36, 800, 1e9, double.PositiveInfinity];
        var failed = new double[h.Length];
        VectorColumns.Failed(h, failed);
        for (int i = 0; i < h.Length; i++)
        {
            Assert.InRange(failed[i], -LogExp.ExpM1(-h[i]) * (1 - 8e-15), -LogExp.ExpM1(-h[i]) * (1 + 8e-15));
        }
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
