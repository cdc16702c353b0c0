using AxleRisk.Core.Damage.Fatigue;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>EN 1993-1-9:2005, direct stress.</summary>
public class EnCurvesTests
{
    private static SnCurve Category(string name) => SnCatalogue.Find("EN 1993-1-9", name)!;

    // The standard prints 0.737, 0.549 and so on; these are by the exact factors (2/5)^(1/3) and (5/100)^(1/5), 2 decimals.
    [Theory]
    [InlineData("160", 117.89, 64.75)]
    [InlineData("125", 92.10, 50.59)]
    [InlineData("112", 82.52, 45.33)]
    [InlineData("100", 73.68, 40.47)]
    [InlineData("90", 66.31, 36.42)]
    [InlineData("80", 58.94, 32.38)]
    [InlineData("71", 52.31, 28.73)]
    [InlineData("56", 41.26, 22.66)]
    [InlineData("36", 26.53, 14.57)]
    public void Knee_and_cut_off_are_the_standards_fractions_of_the_category(string name, double knee, double cutOff)
    {
        Assert.Equal(knee, Category(name).KneesMPa[0], 0.01);
        Assert.Equal(cutOff, Category(name).CutOffMPa, 0.01);
        Near.Relative(2e6, Category(name).CyclesToFailure(double.Parse(name)), 1e-12);
        Near.Relative(5e6, Category(name).CyclesToFailure(Category(name).KneesMPa[0]), 1e-9);
        Near.Relative(1e8, Category(name).CyclesToFailure(Category(name).CutOffMPa), 1e-9);
    }

    // Recomputed, 9 digits.
    [Theory]
    [InlineData(120, 414248.843)]
    [InlineData(80, 1398089.844)]
    [InlineData(45, 10616120.30)]
    [InlineData(30, 80616163.5)]
    public void Category_71_has_its_known_lives(double range, double cycles) =>
        Near.Relative(cycles, Category("71").CyclesToFailure(range), 1e-6);

    // Recomputed, 10 digits. A partial factor on resistance of 1.35 is a factor on stress.
    [Theory]
    [InlineData(1, 1, 1.9171342636)]
    [InlineData(1.35, 0.1, 0.6743830524)]
    public void Blocks_on_category_71_sum_to_the_known_damage(double factor, double share, double damage)
    {
        (double Range, double Cycles)[] blocks = [(120, 2e5), (80, 1e6), (45, 5e6), (30, 2e7), (25, 5e7)];
        Near.Relative(damage, blocks.Sum(b => share * b.Cycles / Category("71").CyclesToFailure(factor * b.Range)), 1e-6);
    }

    [Fact]
    public void Below_the_cut_off_a_cycle_does_no_damage_on_the_mean_curve_either()
    {
        Assert.Equal(double.PositiveInfinity, Category("71").CyclesToFailure(28.7));
        Assert.Equal(double.PositiveInfinity, Category("71").Mean.CyclesToFailure(28.7));
        Assert.Equal(0.329, Category("71").DesignToMeanLog10, 1e-12);
    }
}
