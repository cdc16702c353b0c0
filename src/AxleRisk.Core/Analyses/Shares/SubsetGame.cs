using System.Numerics;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>The Shapley values of a game of which the worth of every subset of players is known.</summary>
internal static class SubsetGame
{
    /// <summary>
    /// The Shapley values (Shapley 1953): the mean, over all orders, of what a player adds to those before it. They sum to the
    /// worth of all players less that of none.
    /// </summary>
    /// <param name="players">The number of players.</param>
    /// <param name="worth">The worth of each subset; bit i of the index says whether player i is in it.</param>
    public static double[] Values(int players, ReadOnlySpan<double> worth)
    {
        if (worth.Length != 1 << players)
        {
            throw new ArgumentException("every subset needs a worth", nameof(worth));
        }

        double[] weights = Weights(players);
        var values = new double[players];
        for (int player = 0; player < players; player++)
        {
            int bit = 1 << player;
            for (int subset = 0; subset < worth.Length; subset++)
            {
                if ((subset & bit) == 0)
                {
                    values[player] += weights[BitOperations.PopCount((uint)subset)] * (worth[subset | bit] - worth[subset]);
                }
            }
        }

        return values;
    }

    /// <summary>
    /// The share of the orders in which exactly a given subset of each size stands before a player: size! (players - 1 - size)! /
    /// players!.
    /// </summary>
    private static double[] Weights(int players)
    {
        var weights = new double[players];
        for (int size = 0; size < players; size++)
        {
            weights[size] = size == 0 ? 1.0 / players : weights[size - 1] * size / (players - size);
        }

        return weights;
    }
}
