using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Sampling;

/// <summary>What every plan must keep.</summary>
public class SamplingPlanTests
{
    private const int Count = 5000;

    public static TheoryData<string> PlanNames => [.. SamplingPlan.Names];

    [Theory]
    [MemberData(nameof(PlanNames))]
    public void A_plan_is_found_by_its_name(string name) => Assert.Equal(name, SamplingPlan.FromName(name, Count).Name);

    [Fact]
    public void An_unknown_name_is_refused_with_the_known_ones()
    {
        ArgumentException e = Assert.Throws<ArgumentException>(() => SamplingPlan.FromName("halton", Count));
        Assert.Contains("plain, latin-hypercube, sobol", e.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SamplingPlan.FromName("plain", 0));
    }

    [Theory]
    [MemberData(nameof(PlanNames))]
    public void Values_lie_strictly_inside_the_unit_interval(string name) =>
        Assert.All(Column(name, 1, 0, Count), u => Assert.InRange(u, UnitInterval.Smallest, UnitInterval.Largest));

    // Bitwise: a value depends on key, dimension and number alone.
    [Property(MaxTest = 100)]
    public void Any_part_of_a_column_equals_that_part_of_the_whole(byte dimension, ushort first, byte length)
    {
        int start = first % (Count - length), d = dimension % 96;
        foreach (string name in SamplingPlan.Names)
        {
            Assert.Equal(Column(name, d, 0, Count)[start..(start + length)], Column(name, d, start, length));
        }
    }

    [Theory]
    [MemberData(nameof(PlanNames))]
    public void Another_seed_or_name_gives_another_column(string name)
    {
        SamplingPlan plan = SamplingPlan.FromName(name, Count);
        double[] a = new double[10], b = new double[10], c = new double[10];
        plan.Fill(new StreamKey(1, "x"), 0, 0, a);
        plan.Fill(new StreamKey(2, "x"), 0, 0, b);
        plan.Fill(new StreamKey(1, "y"), 0, 0, c);
        Assert.Equal(30, a.Concat(b).Concat(c).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(PlanNames))]
    public void Numbers_outside_the_plan_are_refused(string name)
    {
        SamplingPlan plan = SamplingPlan.FromName(name, Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Fill(new StreamKey(1, "x"), -1, 0, new double[1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Fill(new StreamKey(1, "x"), 0, -1, new double[1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Fill(new StreamKey(1, "x"), 0, plan.Samples, new double[1]));
    }

    private static double[] Column(string name, int dimension, long first, int length)
    {
        double[] u = new double[length];
        SamplingPlan.FromName(name, Count).Fill(new StreamKey(9, "x"), dimension, first, u);
        return u;
    }
}
