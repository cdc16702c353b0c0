using AxleRisk.Core.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class RunningMomentsTests
{
    // Closed form: mean 1e9 + 10, variance 30; the textbook formula loses all digits here.
    [Fact]
    public void A_large_offset_costs_no_digits()
    {
        RunningMoments moments = Of([1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16]);
        Assert.Equal(1e9 + 10, moments.Mean);
        Assert.Equal(30, moments.Variance, 1e-9);
        Assert.Equal(Math.Sqrt(30 / 4.0), moments.StandardError, 1e-9);
    }

    [Property(MaxTest = 200)]
    public void Merged_parts_equal_the_whole(short[] numbers, byte split)
    {
        double[] x = [.. numbers.Select(i => i / 100.0)];
        int cut = Math.Min(split % 10, x.Length);
        RunningMoments whole = Of(x), merged = Of(x[..cut]);
        merged.Merge(Of(x[cut..]));
        Assert.Equal(whole.Count, merged.Count);
        Assert.Equal(whole.Mean, merged.Mean, 1e-11);
        if (x.Length > 1)
        {
            Assert.Equal(whole.Variance, merged.Variance, 1e-10 * (1 + whole.Variance));
        }
    }

    [Fact]
    public void One_number_has_no_variance()
    {
        Assert.Equal(double.NaN, Of([3]).Variance);
        Assert.Equal(0, default(RunningMoments).Mean);
    }

    private static RunningMoments Of(double[] numbers)
    {
        RunningMoments moments = default;
        foreach (double x in numbers)
        {
            moments.Add(x);
        }

        return moments;
    }
}
