using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class JackknifeTests
{
    // For the mean the jackknife is the usual t interval: 1..5 has mean 3 and s/sqrt(n) = sqrt(2.5/5); t(.975, 4) = 2.776445
    // (tables, from memory).
    [Fact]
    public void For_a_mean_it_is_the_usual_interval()
    {
        double[][] groups = [[1, 1], [2, 1], [3, 1], [4, 1], [5, 1]];
        Interval interval = Jackknife.Estimate(groups, s => s[0] / s[1]);
        Assert.Equal(3, interval.Estimate, 1e-14);
        Assert.Equal(3 - 2.776445 * Math.Sqrt(0.5), interval.Low, 1e-6);
        Assert.Equal(3 + 2.776445 * Math.Sqrt(0.5), interval.High, 1e-6);
    }

    // Ratio of means of X uniform(0, 1) and Y = X + uniform(0, 1), groups of 50, 20 groups, 2000 replicates: the interval
    // covers the true 1/2 in 95 % of them; standard error of the share 0.49 %, four of them 2 %.
    [Fact]
    public void The_interval_of_a_ratio_covers_at_its_level()
    {
        const int Groups = 20, Size = 50, Replicates = 2000;
        double[] x = new double[Groups * Size], e = new double[Groups * Size];
        int covered = 0;
        for (int replicate = 0; replicate < Replicates; replicate++)
        {
            new RandomStream(new StreamKey(11, "x")).FillUnit((long)replicate * x.Length, x);
            new RandomStream(new StreamKey(11, "e")).FillUnit((long)replicate * x.Length, e);
            double[][] sums = [.. Enumerable.Range(0, Groups).Select(g => GroupSums(x, e, g * Size, Size))];
            Interval interval = Jackknife.Estimate(sums, s => s[0] / s[1]);
            covered += interval.Low <= 0.5 && 0.5 <= interval.High ? 1 : 0;
        }

        Assert.Equal(0.95, (double)covered / Replicates, 0.02);
    }

    [Fact]
    public void Too_few_or_unequal_groups_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Jackknife.Estimate([[1, 2]], s => s[0]));
        Assert.Throws<ArgumentException>(() => Jackknife.Estimate([[1, 2], [1]], s => s[0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Jackknife.Estimate([[1], [2]], s => s[0], 1));
    }

    private static double[] GroupSums(double[] x, double[] e, int start, int size)
    {
        double sumX = 0, sumY = 0;
        for (int i = start; i < start + size; i++)
        {
            sumX += x[i];
            sumY += x[i] + e[i];
        }

        return [sumX, sumY];
    }
}
