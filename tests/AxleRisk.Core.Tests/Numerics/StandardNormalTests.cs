using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class StandardNormalTests
{
    // Recomputed independently (R pnorm, qnorm), 1e-12 relative.
    [Theory]
    [InlineData(1, 1.586552539314571e-1)]
    [InlineData(2, 2.275013194817919e-2)]
    [InlineData(3, 1.349898031630093e-3)]
    [InlineData(3.5, 2.326290790355250e-4)]
    [InlineData(4, 3.167124183311986e-5)]
    [InlineData(5, 2.866515718791933e-7)]
    [InlineData(6, 9.865876450376946e-10)]
    public void Tails_equal_the_reference(double beta, double tail)
    {
        Assert.Equal(tail, StandardNormal.Cumulative(-beta), 1e-12 * tail);
        Assert.Equal(tail, StandardNormal.Upper(beta), 1e-12 * tail);
    }

    // As above; printed to 1e-13 absolute.
    [Theory]
    [InlineData(.9, 1.2815515655446)]
    [InlineData(.95, 1.64485362695147)]
    [InlineData(.975, 1.95996398454005)]
    [InlineData(.99, 2.32634787404084)]
    [InlineData(.999, 3.09023230616781)]
    [InlineData(1e-6, -4.7534243088229)]
    public void Quantiles_equal_the_reference(double p, double z)
    {
        Assert.Equal(z, StandardNormal.Quantile(p), 1e-13);
        Assert.Equal(z, Batch([p])[0], 1e-13);
    }

    // Two independent approximations of about 1e-15 each: 1e-14 relative, and absolute about 0.
    [Fact]
    public void Batch_quantiles_agree_with_the_scalar_ones_in_both_tails()
    {
        double[] p =
        [
            .. Enumerable.Range(0, 3000).Select(i => Math.Exp(-700.0 * (i + 0.5) / 3000)),
            .. Enumerable.Range(1, 2999).Select(i => i / 3000.0),
            .. Enumerable.Range(1, 36).Select(i => 1 - Math.Exp(-i)),
            0.075, 0.925, Math.BitDecrement(0.075), Math.BitIncrement(0.925), Math.BitDecrement(1), double.Epsilon,
        ];
        double[] z = Batch(p);
        for (int i = 0; i < p.Length; i++)
        {
            double expected = StandardNormal.Quantile(p[i]);
            Assert.Equal(expected, z[i], 1e-14 * Math.Max(1, Math.Abs(expected)));
        }
    }

    // Bitwise: the last values of a batch take the same way as the first.
    [Fact]
    public void A_quantile_does_not_depend_on_its_place_or_the_batch_length()
    {
        double[] p = [.. Enumerable.Range(1, 40).Select(i => Math.Pow(0.5, i % 7 == 0 ? 50 : i % 5))];
        double[] one = [.. p.Select(x => Batch([x])[0])];
        foreach (int length in (int[])[0, 1, 7, 8, 9, 15, 16, 17, 40])
        {
            Assert.Equal(one.Take(length), Batch([.. p.Take(length)]));
        }
    }

    [Fact]
    public void Ends_are_infinite_and_anything_outside_is_not_a_number()
    {
        double[] z = Batch([0, 1, -0.1, 1.1, double.NaN, 0.5]);
        Assert.Equal([double.NegativeInfinity, double.PositiveInfinity, double.NaN, double.NaN, double.NaN, 0], z);
    }

    [Fact]
    public void Batches_work_in_place_and_refuse_unequal_lengths()
    {
        double[] x = [0.1, 0.5, 0.9];
        StandardNormal.Quantiles(x, x);
        StandardNormal.Cumulative(x, x);
        Assert.Equal(0.1, x[0], 1e-15);
        Assert.Equal(0.9, x[2], 1e-15);
        Assert.Throws<ArgumentException>(() => StandardNormal.Quantiles(x, new double[2]));
        Assert.Throws<ArgumentException>(() => StandardNormal.Cumulative(x, new double[4]));
    }

    private static double[] Batch(double[] p)
    {
        double[] z = new double[p.Length];
        StandardNormal.Quantiles(p, z);
        return z;
    }
}
