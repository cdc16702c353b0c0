using AxleRisk.Core.Numerics;
using MathNet.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

/// <summary>Against closed forms, finite sums, recurrence and symmetry (DLMF 8.17).</summary>
public sealed class IncompleteBetaTests
{
    private static readonly double[] Points = [1e-12, 0.003, 0.1, 0.25, 0.4999, 0.5, 0.6, 0.8, 0.97];

    [Fact]
    public void One_unit_shape_gives_powers()
    {
        foreach (double shape in (double[])[0.05, 0.5, 1, 3, 40])
        {
            foreach (double x in Points)
            {
                Assert.Equal(Math.Pow(x, shape), IncompleteBeta.At(shape, 1, x, 1 - x).Lower, 1e-12 * Math.Pow(x, shape) + 1e-300);
                Assert.Equal(Math.Pow(1 - x, shape), IncompleteBeta.At(1, shape, x, 1 - x).Upper, 1e-12 * Math.Pow(1 - x, shape));
            }
        }
    }

    // I_x(1/2, 1/2) = (2 / pi) asin sqrt x.
    [Fact]
    public void Two_halves_give_the_arcsine()
    {
        foreach (double x in Points)
        {
            Tails tails = IncompleteBeta.At(0.5, 0.5, x, 1 - x);
            Assert.Equal(1, tails.Lower / (2 / Math.PI * Math.Asin(Math.Sqrt(x))), 1e-13);
            Assert.Equal(1, tails.Upper / (2 / Math.PI * Math.Acos(Math.Sqrt(x))), 1e-13);
            Assert.Equal(Math.Sqrt(x * (1 - x)) / Math.PI, IncompleteBeta.Slope(0.5, 0.5, Math.Log(x), Math.Log(1 - x)), 1e-14);
        }
    }

    // DLMF 8.17.5: I_x(m, n - m + 1) = sum_{j>=m} C(n, j) x^j (1 - x)^(n - j).
    [Fact]
    public void Whole_shapes_have_the_sums_of_the_binomial()
    {
        foreach (int n in (int[])[1, 2, 7, 30, 90])
        {
            foreach (double x in Points)
            {
                double[] terms = [.. Enumerable.Range(0, n + 1).Select(j => Choose(n, j) * Math.Pow(x, j) * Math.Pow(1 - x, n - j))];
                for (int m = 1; m <= n; m++)
                {
                    Tails tails = IncompleteBeta.At(m, n - m + 1, x, 1 - x);
                    Assert.Equal(terms[m..].Sum(), tails.Lower, 2e-12 * tails.Lower + 1e-300);
                    Assert.Equal(terms[..m].Sum(), tails.Upper, 2e-12 * tails.Upper + 1e-300);
                }
            }
        }
    }

    // DLMF 8.17.20: I_x(a + 1, b) = I_x(a, b) - x^a (1 - x)^b / (a B(a, b)); and I_x(a, b) = 1 - I_{1-x}(b, a).
    [Fact]
    public void Recurrence_and_symmetry_hold_for_any_shapes()
    {
        foreach (double a in (double[])[0.05, 0.7, 2.5, 33.3])
        {
            foreach (double b in (double[])[0.05, 0.9, 4.4, 200])
            {
                foreach (double x in Points)
                {
                    Tails tails = IncompleteBeta.At(a, b, x, 1 - x), mirrored = IncompleteBeta.At(b, a, 1 - x, x);
                    double step = Math.Exp((a * Math.Log(x)) + (b * Math.Log(1 - x)) - SpecialFunctions.BetaLn(a, b)) / a;
                    Assert.Equal(tails.Lower, IncompleteBeta.At(a + 1, b, x, 1 - x).Lower + step, 1e-12);
                    Assert.Equal(tails.Lower, mirrored.Upper, 1e-12 * tails.Lower + 1e-300);
                    Assert.Equal(a * step, tails.Slope, 1e-12 * tails.Slope);
                    Assert.Equal(1, tails.Lower + tails.Upper, 1e-14);
                }
            }
        }
    }

    [Theory]
    [InlineData(0.05, 0.05)]
    [InlineData(0.05, 3)]
    [InlineData(0.6, 0.99)]
    [InlineData(1, 1)]
    [InlineData(2.5, 0.4)]
    [InlineData(7, 300)]
    [InlineData(2000, 1500)]
    public void The_quantile_leaves_the_tail_asked_for(double a, double b)
    {
        foreach (double p in (double[])[1e-200, 1e-30, 1e-6, 0.03, 0.4, 0.5])
        {
            // The logit's own rounding, 1e-16 of up to 460 / 0.05, moves the tail by that many powers.
            double low = IncompleteBeta.LogitQuantile(a, b, p, 1 - p), high = IncompleteBeta.LogitQuantile(a, b, 1 - p, p);
            Assert.True(Math.Abs((Lower(low) / p) - 1) < 1e-9, $"lower {p}: {low}, {Lower(low)}");
            Assert.True(Math.Abs((Upper(high) / p) - 1) < 1e-9, $"upper {p}: {high}, {Upper(high)}");
        }

        double Lower(double u) =>
            u < -700 ? Math.Exp((a * u) - SpecialFunctions.BetaLn(a, b)) / a : IncompleteBeta.At(a, b, 1 / (1 + Math.Exp(-u)),
            1 / (1 + Math.Exp(u))).Lower;
        double Upper(double u) =>
            u > 700 ? Math.Exp((-b * u) - SpecialFunctions.BetaLn(a, b)) / b : IncompleteBeta.At(a, b, 1 / (1 + Math.Exp(-u)),
            1 / (1 + Math.Exp(u))).Upper;
    }

    private static double Choose(int n, int k) => Enumerable.Range(1, k).Aggregate(1.0, (c, i) => c * (n - k + i) / i);
}
