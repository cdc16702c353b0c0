using System.Numerics;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public sealed class BinomialTermTests
{
    // Exact rational terms C(n, x) k^x (16 - k)^(n - x) / 16^n in whole numbers; below 16 counts go by gamma functions, good to 2e-13 here.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(15)]
    [InlineData(16)]
    [InlineData(17)]
    [InlineData(33)]
    [InlineData(60)]
    [InlineData(200)]
    public void Every_term_equals_the_exact_fraction(int n)
    {
        BigInteger whole = BigInteger.Pow(16, n);
        foreach (int k in (int[])[1, 3, 8, 13, 15])
        {
            BigInteger choose = 1;
            double all = 0;
            for (int x = 0; x <= n; x++)
            {
                double term = BinomialTerm.Density(x, n, k / 16.0, 1 - (k / 16.0));
                double exact = Quotient(choose * BigInteger.Pow(k, x) * BigInteger.Pow(16 - k, n - x), whole);
                Assert.Equal(1, term / exact, 3e-13);
                all += term;
                choose = choose * (n - x) / (x + 1);
            }

            Assert.Equal(1, all, 3e-13);
        }
    }

    [Fact]
    public void Certain_trials_leave_one_outcome()
    {
        Assert.Equal([1, 0, 0], [BinomialTerm.Density(0, 2, 0, 1), BinomialTerm.Density(1, 2, 0, 1), BinomialTerm.Density(2, 2, 0, 1)]);
        Assert.Equal([0, 0, 1], [BinomialTerm.Density(0, 2, 1, 0), BinomialTerm.Density(1, 2, 1, 0), BinomialTerm.Density(2, 2, 1, 0)]);

        // (1 - p)^n of a p that 1 - p does not hold: e^(-n p), and the same from the other end.
        Assert.Equal(Math.Exp(-1e-8), BinomialTerm.Density(0, 1e12, 1e-20, 1), 1e-16);
        Assert.Equal(Math.Exp(-1e-8), BinomialTerm.Density(1e12, 1e12, 1, 1e-20), 1e-16);
    }

    // 64 digits of the numerator over a power of two.
    private static double Quotient(BigInteger numerator, BigInteger denominator)
    {
        int shift = (int)(denominator.GetBitLength() - numerator.GetBitLength()) + 70;
        return Math.ScaleB((double)((numerator << Math.Max(0, shift)) / denominator), -Math.Max(0, shift));
    }
}
