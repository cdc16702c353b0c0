using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The rows to evaluate for a pair of independent base rows x and x': each keeps a subset of the players from one of the two
/// and has the rest from the other. A row that keeps S from x keeps the complement of S from x', unless S and its complement
/// depend on one another: then the complement has a row of its own.
/// </summary>
internal sealed class PairRows
{
    private readonly List<MixedRow> rows = [];

    /// <summary>The rows of subsets, the first of which is empty and the last all players.</summary>
    private PairRows(IReadOnlyList<UInt128> subsets, ScoreDependence? dependence)
    {
        rows.AddRange(subsets.Select(s => new MixedRow(0, s, false)));
        Subsets = subsets.Count;
        Complements = [.. subsets.Select((s, i) => dependence?.Splits(s) == true ? Add(new MixedRow(0, s, true)) : i)];
    }

    /// <summary>
    /// The rows, as of the first pair of a block: those that keep the subsets from x, in their order, x' first and x last; then
    /// what else the complements need.
    /// </summary>
    public IReadOnlyList<MixedRow> Rows => rows;

    /// <summary>The number of subsets.</summary>
    public int Subsets { get; }

    /// <summary>By subset: the row that keeps its complement from x'.</summary>
    public ImmutableArray<int> Complements { get; }

    /// <summary>The rows of all subsets; the index of a subset is its bits.</summary>
    public static PairRows OfAllSubsets(int players, ScoreDependence? dependence) =>
        new([.. Enumerable.Range(0, 1 << players).Select(s => (UInt128)(uint)s)], dependence);

    /// <summary>The rows of the first 0, 1, ... players of an order.</summary>
    public static PairRows OfOrder(ReadOnlySpan<int> order, ScoreDependence? dependence)
    {
        var subsets = new List<UInt128> { UInt128.Zero };
        foreach (int player in order)
        {
            subsets.Add(subsets[^1] | (UInt128.One << player));
        }

        return new(subsets, dependence);
    }

    private int Add(MixedRow row)
    {
        rows.Add(row);
        return rows.Count - 1;
    }
}
