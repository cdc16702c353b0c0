using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Rainflow counting against the worked example of ASTM E1049-85 (read in agreeing transcriptions) and its identities.</summary>
public class RainflowTests
{
    // ASTM E1049-85, 5.4.4, Figure 6: the history, and the cycles in the order in which the standard finds them.
    private static readonly double[] Standard = [-2, 1, -3, 5, -1, 3, -4, 4, -2];

    [Fact]
    public void The_standard_s_example_is_counted_as_the_standard_counts_it() =>
        Assert.Equal(
            [(3, -0.5, 0.5), (4, -1, 0.5), (4, 1, 1), (8, 1, 0.5), (9, 0.5, 0.5), (8, 0, 0.5), (6, 1, 0.5)],
            CycleList.Of(Standard));

    [Fact]
    public void The_standard_s_example_has_the_published_table() =>
        Assert.Equal([(3, 0.5), (4, 1.5), (6, 0.5), (8, 1), (9, 0.5)], Table(Standard));

    // ASTM E1049-85, 5.4.5, Figure 7: the same signal from its largest absolute value on, closed. From memory, recomputed.
    [Fact]
    public void A_history_that_starts_and_ends_at_its_largest_value_gives_whole_cycles_only() =>
        Assert.Equal([(3, 1), (4, 1), (7, 1), (9, 1)], Table(5, -1, 3, -4, 4, -2, 1, -3, 5));

    // A longer history counted by an independent program with the four-point rule and its residue: the same table.
    [Fact]
    public void A_longer_history_is_counted_as_an_independent_program_counts_it() =>
        Assert.Equal(
            [(3, 2), (5, 0.5), (6, 0.5), (7, 1.5), (9, 0.5), (11, 0.5), (12, 0.5), (13, 0.5)],
            Table(-1, 4, -3, 5, 2, 6, -5, 1, -2, 3, -4, 7, -6, 0));

    [Fact]
    public void Samples_between_turning_points_and_plateaus_change_nothing() =>
        Assert.Equal(CycleList.Of(Standard), CycleList.Of(-2, -2, 0, 1, -3, 1, 5, 5, 2, -1, 3, 3, -4, 0, 4, 4, 1, -2));

    [Fact]
    public void A_constant_signal_and_an_empty_one_have_no_cycles()
    {
        Assert.Empty(CycleList.Of());
        Assert.Empty(CycleList.Of(1, 1, 1));
    }

    // Every range between neighbouring turning points is counted once, as a half: an identity of all such methods.
    [Property(MaxTest = 200)]
    public void Counts_times_ranges_are_half_the_way_travelled(short[] history)
    {
        double way = history.Zip(history.Skip(1), (a, b) => Math.Abs((double)b - a)).Sum();
        double counted = CycleList.Of([.. history.Select(x => (double)x)]).Sum(c => c.Count * c.Range);
        Assert.Equal(way / 2, counted);
    }

    private static (double, double)[] Table(params double[] history) =>
    [
        .. CycleList.Of(history).GroupBy(c => c.Range).OrderBy(g => g.Key).Select(g => (g.Key, g.Sum(c => c.Count))),
    ];
}
