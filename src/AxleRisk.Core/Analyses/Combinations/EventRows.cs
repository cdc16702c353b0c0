namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>
/// The sample that is searched: the failure probability of each row, and the group of the jackknife it belongs to.
/// A combination that speaks of what is averaged exactly (Miner sum, S-N scatter, scatter of a further mode) weighs a row by its
/// failure probability given that factor's value: the weights are kept for each subset of these, by <see cref="Studies.ChanceSubsets"/>.
/// </summary>
internal sealed class EventRows
{
    public EventRows(double[][] weights, byte[] group, int groups)
    {
        Weights = weights;
        Group = group;
        Groups = groups;
        Failures = weights[0].Sum();
    }

    public int Count => Weights[0].Length;

    public double[][] Weights { get; }

    public byte[] Group { get; }

    public int Groups { get; }

    /// <summary>The sum of all rows' failure probabilities.</summary>
    public double Failures { get; }

    /// <summary>Rows whose weights do not depend on what is known.</summary>
    /// <param name="weights">Failure probability of each row.</param>
    /// <param name="groups">Groups of the jackknife, 2 to 255, of consecutive rows.</param>
    public static EventRows Of(double[] weights, int groups) => new(
        [weights],
        [.. Enumerable.Range(0, weights.Length).Select(i => (byte)((long)i * groups / weights.Length))],
        groups);
}

/// <summary>The rows inside one range.</summary>
/// <param name="Owner">The number of the factor; a combination has one range of a factor.</param>
/// <param name="Bits">One bit a row.</param>
/// <param name="Scale">The bit of <see cref="EventRows"/> where the range is of what is averaged exactly, else 0.</param>
internal sealed record RangeRows(int Owner, ulong[] Bits, int Scale)
{
    public bool Has(int row) => (Bits[row >> 6] >> (row & 63) & 1) != 0;

    public static ulong[] NewBits(int rows) => new ulong[(rows + 63) / 64];
}
