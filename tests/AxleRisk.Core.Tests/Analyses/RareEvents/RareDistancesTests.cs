using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

/// <summary>When a sampled probability is not worth printing: rare, and its coefficient of variation above 0.1.</summary>
public sealed class RareDistancesTests
{
    // An interval of 95 % in logarithms reaches 1.96 standard deviations to either side.
    [Theory]
    [InlineData(1e-4, 0.09, false)]
    [InlineData(1e-4, 0.11, true)]
    [InlineData(2e-3, 0.5, false)]
    [InlineData(0, 0, true)]
    public void A_rare_one_with_a_wide_interval_is_poor(double estimate, double cov, bool isPoor)
    {
        double factor = Math.Exp(1.959963984540054 * cov);
        Assert.Equal(isPoor, RareDistances.IsPoor(new Interval(estimate, estimate / factor, estimate * factor)));
    }

    [Fact]
    public void One_without_a_lower_end_is_poor() => Assert.True(RareDistances.IsPoor(new Interval(1e-5, 0, 3e-5)));
}
