using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>What a reading tells of which of two explanations holds.</summary>
public class ApartTests
{
    // By the definition of mutual information (Shannon 1948), summed by hand over two states: A and B as likely, state 0 in 9 of 10 of A
    // and 2 of 10 of B.
    [Fact]
    public void A_state_that_is_seen_tells_its_mutual_information()
    {
        double expected = (0.45 * Math.Log2(0.45 / (0.5 * 0.55))) + (0.05 * Math.Log2(0.05 / (0.5 * 0.45)))
            + (0.10 * Math.Log2(0.10 / (0.5 * 0.55))) + (0.40 * Math.Log2(0.40 / (0.5 * 0.45)));
        Assert.Equal(expected, ApartSummary.Bits([0.45, 0.05], [0.1, 0.4], null, 0), 1e-12);
        Assert.Equal(1, ApartSummary.Bits([1, 0], [0, 1], null, 0), 1e-12);
        Assert.Equal(0, ApartSummary.Bits([0.3, 0.3], [0.1, 0.1], null, 0), 1e-12);
    }

    // Two values at -1 and 1, a normal error: the information of the binary channel with normal noise,
    // 1 - E log2(1 + exp(-2 y / s^2)) with y about 1 (information theory's textbook case; here by the midpoint rule).
    [Theory]
    [InlineData(0.5)]
    [InlineData(1.0)]
    [InlineData(2.0)]
    public void A_reading_with_an_error_tells_less(double deviation)
    {
        double expected = 1;
        for (int i = 0; i < 4000; i++)
        {
            double z = -10 + ((i + 0.5) * 0.005);
            expected -= 0.005 * StandardNormal.Density(z) * Math.Log2(1 + Math.Exp(-2 * (1 + (deviation * z)) / (deviation * deviation)));
        }

        Assert.Equal(expected, ApartSummary.Bits([1, 0], [0, 1], [-1, 1], deviation), 1e-3);
    }
}
