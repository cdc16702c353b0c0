using AxleRisk.Core.Analyses.Ranking.Shares;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Ranking;

public sealed class GamesTests
{
    // Any worth will do: the sines are as good as random.
    private static readonly double[] Worth = [.. Enumerable.Range(0, 16).Select(s => Math.Sin((7 * s) + 1))];

    [Fact]
    public void Values_from_subsets_are_the_means_over_all_orders()
    {
        // The definition, by brute force over the 24 orders of 4 players.
        double[] expected = new double[4];
        int[][] orders = [.. Orders([0, 1, 2, 3])];
        Assert.Equal(24, orders.Length);
        foreach (int[] order in orders)
        {
            int before = 0;
            foreach (int player in order)
            {
                expected[player] += (Worth[before | (1 << player)] - Worth[before]) / orders.Length;
                before |= 1 << player;
            }
        }

        Near(expected, SubsetGame.Values(4, Worth));
        Assert.Equal(Worth[15] - Worth[0], expected.Sum(), 1e-14);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Orders_of_the_evaluated_players_average_over_all_places_of_the_scale_players(int scale)
    {
        int ordered = 4 - scale;
        var game = new OrderGame(ordered, scale);
        double[] values = new double[4];
        int[][] orders = [.. Orders([.. Enumerable.Range(0, ordered)])];
        foreach (int[] order in orders)
        {
            double[][] worth = [.. Enumerable.Range(0, 1 << scale).Select(q =>
                Enumerable.Range(0, ordered + 1).Select(k => Worth[(q << ordered) | order.Take(k).Sum(p => 1 << p)]).ToArray())];
            game.Add(order, worth, 1.0 / orders.Length, values);
        }

        Near(SubsetGame.Values(4, Worth), values);
    }

    [Theory]
    [InlineData(-2.5, 0)]
    [InlineData(-2.5, 0.3)]
    [InlineData(0.4, 0.7)]
    [InlineData(-1.2, 0.95)]
    [InlineData(-1.2, 1)]
    public void The_table_agrees_with_the_integral(double g, double rho)
    {
        var table = new BivariateTable(g, rho, -6.3, 2.7);
        for (double h = -6.3; h <= 2.7; h += 0.01)
        {
            // Cubic Hermite with step 1/8: step^4 / 384 of the fourth derivative, about 1.4 / (1 - rho^2)^1.5 where rho is strong.
            double error = rho > 0.9 && rho < 1 ? 1e-4 : 1e-6;
            Assert.Equal(BivariateNormal.Cumulative(g, h, rho), table.At(h), error);
        }
    }

    private static IEnumerable<int[]> Orders(int[] players) => players.Length == 0
        ? [[]]
        : players.SelectMany(p => Orders([.. players.Where(o => o != p)]).Select(rest => (int[])[p, .. rest]));

    private static void Near(double[] expected, double[] actual)
    {
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], actual[i], 1e-14);
        }
    }
}
