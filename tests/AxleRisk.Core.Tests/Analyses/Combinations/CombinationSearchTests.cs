using AxleRisk.Core.Analyses.Combinations;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

public sealed class CombinationSearchTests
{
    private static readonly CombineLimits Small = new() { LeastRows = 4, LeastEffectiveFailures = 2, LeastCoverage = 0.03 };

    [Property(MaxTest = 200)]
    public void The_search_finds_what_exhaustion_finds(ulong seed, byte shape)
    {
        int factors = 3 + (shape % 4), rows = 60 + (shape % 67);
        double[][] units = Synthetic.Units(factors + 1, rows, seed);
        double[] plain = [.. units[factors].Select(u => Math.Pow(u, 3))];
        EventRows sample = new(
            [plain, [.. plain.Select((p, i) => p * units[0][i])], [.. plain.Select((p, i) => Math.Min(1, p * 2 * units[1][i]))], units[0]],
            EventRows.Of(plain, 4).Group, 4);

        // Two ranges of each factor, those of the first two carry the scale bits.
        RangeRows[] ranges = [.. Enumerable.Range(0, factors).SelectMany(f => new[]
        {
            Synthetic.Of(f, units[f], x => x > 0.6, f == 0 ? 1 : f == 1 ? 2 : 0),
            Synthetic.Of(f, units[f], x => x < 0.5, f == 0 ? 1 : f == 1 ? 2 : 0),
        })];
        SearchOutcome found = new CombinationSearch(sample, ranges, Small).Run(1);
        Assert.Equal(
            Exhaustive(sample, ranges).Select(c => string.Join(',', c)).Order(),
            found.Eligible.Select(c => string.Join(',', c.Items)).Order());
    }

    // Two triples that share two members and are as bad, but less than half of their failures, are one theme; pairs that share a member
    // are not, nor are triples that share one.
    [Theory]
    [InlineData(new[] { 0, 1, 2 }, new[] { 0, 1, 3 }, 1)]
    [InlineData(new[] { 0, 1, 2 }, new[] { 0, 3, 4 }, 2)]
    [InlineData(new[] { 0, 1 }, new[] { 0, 2 }, 2)]
    public void Variations_of_one_theme_are_told_once(int[] first, int[] second, int told)
    {
        double[][] units = Synthetic.Units(5, 100_000, 5);
        EventRows rows = Synthetic.Rows(units, u => first.All(f => u[f] > 0.8) || second.All(f => u[f] > 0.8) ? 0.5 : 0.001);
        int[][] listed = Synthetic.Listed(rows, Synthetic.UpperFifths(units));
        Assert.Equal(told, listed.Count(l => l.SequenceEqual(first) || l.SequenceEqual(second)));
    }

    [Fact]
    public void Ranges_of_the_scale_that_tell_only_together_are_found()
    {
        // Neither range of Miner sum or scatter has a failure alone: only with both are there weights.
        double[] some = [.. Enumerable.Range(0, 40).Select(i => i % 2 * 0.5)], none = new double[40];
        RangeRows Half(int owner, int scale) => Synthetic.Of(owner, [.. some.Select((_, i) => i / 40.0)], x => x >= 0.5, scale);
        SearchOutcome found = new CombinationSearch(
            new EventRows([some, none, none, some], EventRows.Of(some, 4).Group, 4),
            [Half(0, 1), Half(1, 2), Half(2, 0)], Small).Run(1);
        Assert.Equal(["0,1", "0,1,2", "2"], found.Eligible.Select(c => string.Join(',', c.Items)).Order());
    }

    [Fact]
    public void The_number_of_threads_changes_no_digit()
    {
        double[][] units = Synthetic.Units(9, 20_000, 5);
        EventRows rows = Synthetic.Rows(units, u => Math.Pow(u[0] * u[1] * (1 + u[2]) / 2, 4));
        CombineResult one = Synthetic.Search(rows, Synthetic.UpperFifths(units), threads: 1);
        CombineResult many = Synthetic.Search(rows, Synthetic.UpperFifths(units), threads: 4);
        Assert.NotEmpty(one.Combinations);
        Assert.Equal(one.Searched.Evaluated, many.Searched.Evaluated);
        Assert.Equal(
            one.Combinations.Select(c => (string.Join(',', c.Members.Select(m => m.Column)), c.Probability, c.Coverage, c.Lift)),
            many.Combinations.Select(c => (string.Join(',', c.Members.Select(m => m.Column)), c.Probability, c.Coverage, c.Lift)));
    }

    // Of boxes with 2, 3 and 1 things: 6 singles, 2*3 + 2*1 + 3*1 = 11 pairs, 6 triples.
    [Theory]
    [InlineData(1, 6)]
    [InlineData(2, 17)]
    [InlineData(4, 23)]
    public void The_number_of_possible_combinations_is_counted(int most, double expected) =>
        Assert.Equal(expected, RangePlan.Possible([2, 3, 1], most));

    private static IEnumerable<int[]> Exhaustive(EventRows sample, RangeRows[] ranges)
    {
        for (int set = 1; set < 1 << ranges.Length; set++)
        {
            int[] items = [.. Enumerable.Range(0, ranges.Length).Where(i => (set >> i & 1) != 0)];
            if (items.Length > 4 || items.Select(i => ranges[i].Owner).Distinct().Count() < items.Length)
            {
                continue;
            }

            double[] weights = sample.Weights[items.Aggregate(0, (s, i) => s | ranges[i].Scale)];
            double[] inside = [.. weights.Where((_, row) => items.All(i => ranges[i].Has(row)))];
            double sum = inside.Sum(), squares = inside.Sum(w => w * w);
            if (inside.Length >= Small.LeastRows && sum >= Small.LeastCoverage * sample.Failures
                && sum * sum >= Small.LeastEffectiveFailures * squares)
            {
                yield return items;
            }
        }
    }
}
