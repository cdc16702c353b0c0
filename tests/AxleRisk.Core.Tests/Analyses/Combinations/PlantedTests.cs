using AxleRisk.Core.Analyses.Combinations;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

/// <summary>What is there is found first, and what is not there is not claimed; each over 20 seeds.</summary>
public sealed class PlantedTests
{
    private const int Factors = 12;
    private const int Seeds = 20;

    // 2 % fail, 50 % inside the planted combination. A quadruple of fifths holds 1 row in 625: 160 of 100,000.
    [Theory]
    [InlineData(2, 20_000)]
    [InlineData(3, 50_000)]
    [InlineData(4, 100_000)]
    public void A_planted_combination_is_found_first(int members, int rows)
    {
        int found = 0;
        for (ulong seed = 0; seed < Seeds; seed++)
        {
            double[][] units = Synthetic.Units(Factors, rows, seed);
            int[] planted = [.. Enumerable.Range(0, members).Select(m => (int)(((ulong)(5 * m) + seed) % Factors)).Order()];
            int[][] listed = Synthetic.Listed(
                Synthetic.Rows(units, u => planted.All(f => u[f] > 0.8) ? 0.5 : 0.02), Synthetic.UpperFifths(units));
            found += listed.Length > 0 && listed[0].SequenceEqual(planted) ? 1 : 0;
        }

        Assert.InRange(found, Seeds - 1, Seeds);
    }

    // As above, but failures are counted: the probability of each row is 0 or 1 by the draw of one more column.
    [Theory]
    [InlineData(2, 20_000)]
    [InlineData(3, 50_000)]
    [InlineData(4, 100_000)]
    public void A_planted_combination_is_found_first_where_failures_are_counted(int members, int rows)
    {
        int found = 0;
        for (ulong seed = 0; seed < Seeds; seed++)
        {
            double[][] units = Synthetic.Units(Factors + 1, rows, seed);
            int[] planted = [.. Enumerable.Range(0, members).Select(m => (int)(((ulong)(5 * m) + seed) % Factors)).Order()];
            int[][] listed = Synthetic.Listed(
                Synthetic.Rows(units, u => u[Factors] < (planted.All(f => u[f] > 0.8) ? 0.5 : 0.02) ? 1 : 0),
                Synthetic.UpperFifths(units[..Factors]));
            found += listed.Length > 0 && listed[0].SequenceEqual(planted) ? 1 : 0;
        }

        Assert.InRange(found, Seeds - 1, Seeds);
    }

    // Failures counted at 2 % and 20 %, and smooth probabilities with a heavy tail; the chosen end of each factor is the
    // worse of its two, as in a real run.
    [Theory]
    [InlineData(0.02, true)]
    [InlineData(0.2, true)]
    [InlineData(0, false)]
    public void Of_pure_noise_nothing_is_claimed(double probability, bool counted)
    {
        int clean = 0, cleanPairs = 0;
        for (ulong seed = 0; seed < Seeds; seed++)
        {
            double[][] units = Synthetic.Units(Factors + 1, 30_000, 100 + seed);
            EventRows rows = Synthetic.Rows(units, u => counted ? (u[Factors] < probability ? 1 : 0) : Math.Pow(u[Factors], 12));
            RangeRows[] ranges = [.. Enumerable.Range(0, Factors).Select(f => Worse(
                rows, Synthetic.Of(f, units[f], x => x < 0.2), Synthetic.Of(f, units[f], x => x > 0.8)))];
            clean += Synthetic.Listed(rows, [.. ranges]).Length == 0 ? 1 : 0;
            cleanPairs += PairEffects.Of(rows, Synthetic.Told(Factors), ranges, [.. Enumerable.Range(0, Factors)], new CombineLimits())
                .Any(p => p.IsNotable) ? 0 : 1;
        }

        Assert.InRange(clean, Seeds - 1, Seeds);
        Assert.InRange(cleanPairs, Seeds - 1, Seeds);
    }

    [Fact]
    public void A_superset_that_adds_nothing_is_not_listed()
    {
        double[][] units = Synthetic.Units(8, 60_000, 7);
        int[][] listed = Synthetic.Listed(Synthetic.Rows(units, u => u[1] > 0.8 && u[4] > 0.8 ? 0.6 : 0.03), Synthetic.UpperFifths(units));

        // The pair and no more: its members alone raise the average too, but by the same failures.
        Assert.Equal([[1, 4]], listed);
    }

    [Fact]
    public void A_combination_that_says_what_a_listed_one_says_is_not_listed()
    {
        // Two factors that are nearly the same thing.
        double[][] units = Synthetic.Units(4, 40_000, 3);
        units[2] = [.. units[1].Select((u, i) => i % 50 == 0 ? units[3][i] : u)];
        int[][] listed = Synthetic.Listed(
            Synthetic.Rows(units, u => u[0] > 0.8 && u[1] > 0.8 ? 0.6 : 0.03), Synthetic.UpperFifths(units), new CombineLimits
            { MostMembers = 2 });
        Assert.Single(listed, l => l.Length == 2);
    }

    private static RangeRows Worse(EventRows rows, RangeRows a, RangeRows b)
    {
        var sums = new GroupSums(rows, [a, b]);
        return sums.Probability([0]).Estimate > sums.Probability([1]).Estimate ? a : b;
    }
}
