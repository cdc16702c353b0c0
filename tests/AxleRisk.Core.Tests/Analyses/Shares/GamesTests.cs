using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Shares;

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
            game.Add(order, worth, [.. Enumerable.Range(0, ordered + 1)], 1.0 / orders.Length, values);
        }

        Near(SubsetGame.Values(4, Worth), values);
    }

    [Theory]
    [InlineData(0.04, 1e-6)]
    [InlineData(0.3, 1e-6)]
    [InlineData(0.7, 3e-6)]
    [InlineData(0.9, 3e-5)]
    [InlineData(0.95, 1e-4)]
    public void The_table_agrees_with_the_integral(double rho, double error)
    {
        // Cubic Hermite with step 1/8: step^4 / 384 = 6.4e-7 of the fourth derivatives in both directions, about 1.4 / (1 - rho^2)^1.5.
        var table = new BivariateTable(rho);
        double[] h = [.. Enumerable.Range(0, 901).Select(i => -6.3 + (i / 100.0)), -40, 12], many = new double[h.Length],
            two = new double[2];
        foreach (double g in new[] { -14.0, -6.01, -2.53, -1.2, 0.4, 2.97, 15 })
        {
            table.Fill(g, h, many);
            for (int i = 0; i < h.Length; i++)
            {
                double exact = BivariateNormal.Cumulative(g, h[i], rho);
                Assert.Equal(exact, many[i], error);
                Assert.True(rho > 0.7 || g < -7 || h[i] < -6.3 || Math.Abs(many[i] - exact) <= 0.01 * exact,
                    $"{many[i]:G4} for {exact:G4} at {g}, {h[i]}");
            }

            // Few points go another way to the same numbers; where they are integrated instead, to the integral.
            for (int i = 0; i + 1 < h.Length; i += 97)
            {
                table.Fill(g, [h[i], 12], two);
                Assert.Equal(rho > BivariateTable.GreatestInGrid ? BivariateNormal.Cumulative(g, h[i], rho) : many[i], two[0], 1e-14);
            }
        }
    }

    [Fact]
    public void The_normal_probability_of_the_table_is_that_of_the_error_function()
    {
        for (double z = -6; z < 9; z += 0.0073)
        {
            Assert.Equal(StandardNormal.Cumulative(z), Cubic.Phi(z), 2e-9);
            Assert.Equal(1, Cubic.Phi(z) / StandardNormal.Cumulative(z), 4e-6);
        }

        Assert.Equal([0, 1], [Math.Round(Cubic.Phi(double.NegativeInfinity), 15), Math.Round(Cubic.Phi(double.PositiveInfinity), 15)]);
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
