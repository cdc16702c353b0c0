using System.Numerics;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>
/// Interactions in a game whose value of a set of players is what they explain together: the closed Sobol' index, times
/// the variance. A set is a bit mask.
/// </summary>
internal static class InteractionGame
{
    /// <summary>Second order: v(ij) - v(i) - v(j) + v(none) (Saltelli 2002, Computer Physics Communications 145, 280-297).</summary>
    public static double SecondOrder(ReadOnlySpan<double> value, int i, int j) => Difference(value, 0, 1 << i, 1 << j);

    /// <summary>
    /// The Shapley interaction index (Grabisch and Roubens 1999, International Journal of Game Theory 28, 547-565): the mean over
    /// the orders of play of what the pair adds beyond its single players, to those that came before.
    /// </summary>
    public static double Shapley(ReadOnlySpan<double> value, int i, int j)
    {
        int pair = (1 << i) | (1 << j);
        int players = BitOperations.Log2((uint)value.Length);
        double sum = 0;
        for (int set = 0; set < value.Length; set++)
        {
            if ((set & pair) == 0)
            {
                sum += Weight(players, BitOperations.PopCount((uint)set)) * Difference(value, set, 1 << i, 1 << j);
            }
        }

        return sum;
    }

    private static double Difference(ReadOnlySpan<double> value, int set, int i, int j) =>
        value[set | i | j] - value[set | i] - value[set | j] + value[set];

    /// <summary>(n - t - 2)! t! / (n - 1)!, as 1 / ((n - 1) binomial(n - 2, t)).</summary>
    private static double Weight(int players, int size)
    {
        double binomial = 1;
        for (int k = 1; k <= size; k++)
        {
            binomial *= (players - 1.0 - k) / k;
        }

        return 1 / ((players - 1) * binomial);
    }
}
