using AxleRisk.Core.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class BinomialTailTests
{
    // Wilks: the smallest sample whose k-th extreme bounds the p-quantile with confidence C; recomputed, exact.
    [Theory]
    [InlineData(.95, .95, 1, 59)]
    [InlineData(.95, .95, 2, 93)]
    [InlineData(.95, .95, 3, 124)]
    [InlineData(.90, .95, 1, 29)]
    [InlineData(.90, .95, 2, 46)]
    [InlineData(.90, .95, 3, 61)]
    [InlineData(.99, .95, 1, 299)]
    [InlineData(.99, .95, 2, 473)]
    [InlineData(.99, .95, 3, 628)]
    [InlineData(.99, .99, 1, 459)]
    [InlineData(.99, .99, 2, 662)]
    [InlineData(.99, .99, 3, 838)]
    [InlineData(.999, .95, 1, 2995)]
    [InlineData(.999, .95, 2, 4742)]
    [InlineData(.999, .95, 3, 6294)]
    public void The_sample_sizes_of_Wilks_are_met(double p, double confidence, long order, long n)
    {
        Assert.True(BinomialTail.AtLeast(order, n, 1 - p) >= confidence);
        Assert.True(BinomialTail.AtLeast(order, n - 1, 1 - p) < confidence);
    }

    // The slow twin: the sum of all terms, each by gamma functions (about 1e-12 for n up to 200).
    [Property(MaxTest = 300)]
    public void Tails_equal_the_sums_of_their_terms(byte size, byte successes, ushort probability)
    {
        int n = 1 + size % 200, k = successes % (n + 2);
        double p = (probability + 0.5) / 65536;
        double atLeast = Enumerable.Range(0, n + 1).Where(i => i >= k).Sum(i => MathNet.Numerics.Distributions.Binomial.PMF(p, n, i));
        double atMost = Enumerable.Range(0, n + 1).Where(i => i < k).Sum(i => MathNet.Numerics.Distributions.Binomial.PMF(p, n, i));
        Assert.Equal(atLeast, BinomialTail.AtLeast(k, n, p), 1e-11 * atLeast + 1e-300);
        Assert.Equal(atMost, BinomialTail.AtMost(k - 1, n, p), 1e-11 * atMost + 1e-300);
    }

    // With p = 1/2 and n odd both halves have probability 1/2; the middle term is sqrt(2/(pi n)) (1 - 1/(4 n)) for large n
    // (Stirling), here good to 1e-17 relative. The tail is a product of some ten thousand rounded terms, hence 1e-11.
    [Fact]
    public void A_hundred_million_trials_lose_no_digits()
    {
        Assert.Equal(0.5, BinomialTail.AtLeast(50_000_000, 99_999_999, 0.5), 1e-11);
        const double N = 1e8;
        double middle = Math.Sqrt(2 / (Math.PI * N)) * (1 - 1 / (4 * N));
        Assert.Equal(middle, BinomialTerm.Density(N / 2, N, 0.5, 0.5), 1e-13 * middle);
    }
}
