using AxleRisk.Core.Damage.Yields;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Rice's rate of leaving the elastic range.</summary>
public class YieldRateTests
{
    // Rice 1944: crossings of a level at k standard deviations are exp(-k^2/2) of those of the mean.
    [Fact]
    public void A_level_three_deviations_off_is_crossed_at_Rices_rate() =>
        Near.Relative(2 * Math.Exp(-4.5), YieldRate.PerSecond(100, 2500, 10_000, 250) - 2 * Math.Exp(-0.5 * 49), 1e-12);

    // Expected maximum of a narrow-band process over n cycles (Longuet-Higgins 1952): the level with one crossing in n is sqrt(2 ln n).
    [Fact]
    public void The_level_with_one_crossing_in_n_cycles_is_the_root_of_two_ln_n()
    {
        double level = Math.Sqrt(2 * Math.Log(1e6));
        Near.Relative(1e-6, YieldRate.PerSecond(0, 1, 1, level) / 2, 1e-9);
    }

    [Fact]
    public void Static_yield_is_immediate_and_no_load_never_yields()
    {
        Assert.Equal(double.PositiveInfinity, YieldRate.PerSecond(300, 1, 1, 300));
        Assert.Equal(double.PositiveInfinity, YieldRate.PerSecond(double.NaN, 1, 1, 300));
        Assert.Equal(0, YieldRate.PerSecond(100, 0, 0, 300));
    }
}
