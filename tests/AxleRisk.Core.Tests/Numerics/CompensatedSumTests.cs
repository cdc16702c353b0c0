using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class CompensatedSumTests
{
    // Neumaier's own example (1974, from memory): plain and Kahan summation return 0.
    [Fact]
    public void Terms_beyond_the_sum_s_precision_are_not_lost() => Assert.Equal(2, CompensatedSum.Of([1, 1e100, 1, -1e100]));

    [Fact]
    public void A_million_tenths_are_exact_to_the_last_bit()
    {
        double[] tenths = new double[1_000_000];
        Array.Fill(tenths, 0.1);
        Assert.Equal(100_000, CompensatedSum.Of(tenths));
        Assert.NotEqual(100_000, tenths.Sum()); // the plain sum is off, so the test can fail
    }
}
