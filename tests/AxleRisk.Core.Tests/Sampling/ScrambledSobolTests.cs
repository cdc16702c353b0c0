using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using Xunit;

namespace AxleRisk.Core.Tests.Sampling;

public class ScrambledSobolTests
{
    [Fact]
    public void Sixty_four_plain_points_of_the_first_two_dimensions_are_a_net()
    {
        double[] x = [.. Enumerable.Range(0, 64).Select(i => SobolPoints.Plain(0, i))];
        double[] y = [.. Enumerable.Range(0, 64).Select(i => SobolPoints.Plain(1, i))];
        Assert.Equal(1, SobolPoints.MostInElementaryInterval(x, y, 6));
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(11)]
    public void Scrambling_keeps_the_net_of_the_first_two_dimensions(int m)
    {
        for (ulong seed = 0; seed < 5; seed++)
        {
            double[] x = SobolPoints.Scrambled(0, 1 << m, seed), y = SobolPoints.Scrambled(1, 1 << m, seed);
            Assert.Equal(1, SobolPoints.MostInElementaryInterval(x, y, m));
        }
    }

    [Fact]
    public void Every_dimension_puts_one_scrambled_point_in_every_stratum()
    {
        const int N = 1 << 12;
        for (int d = 0; d < SobolDirections.Dimensions; d++)
        {
            double[] u = SobolPoints.Scrambled(d, N, 17);
            Assert.Equal(N, u.Select(x => (int)(x * N)).Distinct().Count());
        }
    }

    // f = prod (1 + (u_j - 1/2)) over four dimensions has mean 1 exactly and variance (13/12)^4 - 1 = 0.377 for one sample.
    // Of 300 replicates the mean must lie within four standard errors, and with 1024 points the variance of an estimate be
    // far below 0.377/1024: smooth functions gain more than a factor 1000, and a factor 50 is asserted. From 64 to 1024
    // points the variance would fall by 16 for independent points; for a smooth function by nearly 16^3, and 100 is asserted.
    [Fact]
    public void Estimates_are_unbiased_and_their_variance_falls_faster_than_that_of_independent_points()
    {
        RunningMoments few = Replicates(64), many = Replicates(1024);
        Assert.Equal(1, few.Mean, 4 * few.StandardError);
        Assert.Equal(1, many.Mean, 4 * many.StandardError);
        Assert.InRange(many.Variance, 0, 0.377 / 1024 / 50);
        Assert.InRange(many.Variance, 0, few.Variance / 100);
    }

    // A flip of a digit must be a fair coin, and the flips of two digits, or of one digit below two different beginnings,
    // independent: that is all the variance of the estimates depends on. 63 nodes of the first six digits, 20 000 keys:
    // 63 + 1953 normal deviates, none beyond 5 (probability 1e-3 that one is).
    [Fact]
    public void Flips_of_the_scrambling_are_fair_and_pairwise_independent()
    {
        const int Keys = 20_000, Nodes = 63;
        int[] ones = new int[Nodes];
        int[,] differ = new int[Nodes, Nodes];
        for (ulong key = 0; key < Keys; key++)
        {
            int[] flips = Flips(key);
            for (int a = 0; a < Nodes; a++)
            {
                ones[a] += flips[a];
                for (int b = 0; b < a; b++)
                {
                    differ[a, b] += flips[a] ^ flips[b];
                }
            }
        }

        double limit = 5 * Math.Sqrt(Keys / 4.0);
        for (int a = 0; a < Nodes; a++)
        {
            Assert.Equal(Keys / 2.0, ones[a], limit);
            for (int b = 0; b < a; b++)
            {
                Assert.Equal(Keys / 2.0, differ[a, b], limit);
            }
        }
    }

    private static int[] Flips(ulong key)
    {
        OwenScrambling scrambling = new(new Core.Randomness.RandomStream(new(key, "flips")), Lanes.Scrambling);
        List<int> flips = [];
        for (int level = 0; level < 6; level++)
        {
            for (ulong beginning = 0; beginning < 1ul << level; beginning++)
            {
                flips.Add((int)(scrambling.Scramble(beginning) >> (63 - level)) & 1);
            }
        }

        return [.. flips];
    }

    private static RunningMoments Replicates(int n)
    {
        RunningMoments estimates = default;
        for (ulong seed = 0; seed < 300; seed++)
        {
            double[][] u = [.. Enumerable.Range(0, 4).Select(d => SobolPoints.Scrambled(d, n, seed))];
            estimates.Add(Enumerable.Range(0, n).Average(i => u.Aggregate(1.0, (f, column) => f * (0.5 + column[i]))));
        }

        return estimates;
    }
}
