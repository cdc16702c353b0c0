using System.Numerics;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// What the players of a game add in one order (Castro, Gomez and Tejada 2009, Computers and Operations Research 36,
/// 1726-1730): an unbiased estimate of their Shapley values where the order is random. The order is that of the players that
/// cost evaluations; the scale players, which cost none, are averaged exactly over all their places in it.
/// </summary>
/// <param name="ordered">The number of players in the order.</param>
/// <param name="scale">The number of scale players; their numbers follow those of the ordered ones.</param>
internal sealed class OrderGame(int ordered, int scale)
{
    private readonly double[][] besideOrdered = BesideOrdered(ordered, scale);
    private readonly double[][] besideScale = BesideScale(ordered, scale);

    /// <summary>Adds each player's part of an order, times a factor.</summary>
    /// <param name="order">The ordered players, the first first.</param>
    /// <param name="worth">By subset of scale players: worths.</param>
    /// <param name="places">Where among them is that with the first 0, 1, ... players of the order.</param>
    /// <param name="times">The factor.</param>
    /// <param name="values">Takes the values; one a player.</param>
    public void Add(ReadOnlySpan<int> order, double[][] worth, ReadOnlySpan<int> places, double times, double[] values)
    {
        for (int q = 0; q < worth.Length; q++)
        {
            double[] with = worth[q];
            int before = BitOperations.PopCount((uint)q);
            for (int k = 0; k < ordered; k++)
            {
                values[order[k]] += times * besideOrdered[before][k] * (with[places[k + 1]] - with[places[k]]);
            }

            for (int player = 0; player < scale; player++)
            {
                if ((q >> player & 1) == 0)
                {
                    double[] joined = worth[q | (1 << player)];
                    double sum = 0;
                    for (int k = 0; k <= ordered; k++)
                    {
                        sum += besideScale[before][k] * (joined[places[k]] - with[places[k]]);
                    }

                    values[ordered + player] += times * sum;
                }
            }
        }
    }

    /// <summary>
    /// By number of scale players and k: the probability that just these scale players stand before the ordered player number k.
    /// </summary>
    private static double[][] BesideOrdered(int ordered, int scale) =>
        [.. Enumerable.Range(0, scale + 1).Select(before => Enumerable.Range(0, ordered).Select(k =>
            Rising(k + 1, before) * Rising(ordered - k, scale - before) / Rising(ordered + 1, scale)).ToArray())];

    /// <summary>
    /// By number of other scale players and k: the probability that the first k ordered players and just these others stand
    /// before a scale player.
    /// </summary>
    private static double[][] BesideScale(int ordered, int scale) =>
        [.. Enumerable.Range(0, scale).Select(before => Enumerable.Range(0, ordered + 1).Select(k =>
            Rising(k + 1, before) * Rising(ordered - k + 1, scale - 1 - before) / Rising(ordered + 2, scale - 1) / (ordered + 1))
                .ToArray())];

    /// <summary>start (start + 1) ... of <paramref name="factors"/> factors: the ways to place them one by one in a growing row.</summary>
    private static double Rising(int start, int factors)
    {
        double product = 1;
        for (int i = 0; i < factors; i++)
        {
            product *= start + i;
        }

        return product;
    }
}
