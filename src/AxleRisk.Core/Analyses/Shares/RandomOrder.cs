using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>Random orders.</summary>
internal static class RandomOrder
{
    /// <summary>
    /// The order of a number: all equally likely (Fisher and Yates; Knuth, The Art of Computer Programming 2, 3.4.2, algorithm
    /// P).
    /// </summary>
    public static int[] Of(RandomStream stream, long number, int players)
    {
        int[] order = new int[players];
        for (int i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        for (int i = order.Length - 1; i > 0; i--)
        {
            int j = (int)(UnitInterval.FromWord(stream.Word(number, i)) * (i + 1));
            (order[i], order[j]) = (order[j], order[i]);
        }

        return order;
    }
}
