using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Outcomes;

/// <summary>
/// What is kept of any number of evaluations: enough for failure probabilities at every distance, lives, and the damage of
/// the legs, in memory that does not grow. Two summaries are joined by adding whole numbers, so that order, threads and
/// parts leave no trace.
/// </summary>
public sealed class LifeSummary
{
    /// <summary>An empty summary.</summary>
    /// <param name="legs">The number of legs.</param>
    /// <param name="modes">An empty table of modes; null where fatigue is the only one and nothing ages.</param>
    public LifeSummary(int legs, ModeTable? modes = null)
    {
        Modes = modes;
        LegShareSums = new ExactSum[legs];
        LegShareSquares = new ExactSum[legs];
    }

    /// <summary>The number of evaluations.</summary>
    public long Evaluations => Life.Count;

    /// <summary>The damage per km, Miner sum and S-N scatter left out.</summary>
    public LogHistogram Damage { get; } = new();

    /// <summary>The life in km.</summary>
    public LogHistogram Life { get; } = new();

    /// <summary>Failure by mode over distance; null where fatigue is the only mode and nothing ages.</summary>
    public ModeTable? Modes { get; }

    /// <summary>Evaluations whose damage is finite: only those have shares of damage.</summary>
    public long WithShares { get; private set; }

    /// <summary>Sums of each leg's share of the damage.</summary>
    public ExactSum[] LegShareSums { get; }

    /// <summary>Sums of the squares of those shares.</summary>
    public ExactSum[] LegShareSquares { get; }

    /// <summary>Adds a block's sums of the legs' shares and of their squares, of <paramref name="rows"/> evaluations.</summary>
    public void AddShares(long rows, ReadOnlySpan<double> sums, ReadOnlySpan<double> squares)
    {
        WithShares += rows;
        for (int leg = 0; leg < sums.Length; leg++)
        {
            LegShareSums[leg] = LegShareSums[leg].Plus(sums[leg]);
            LegShareSquares[leg] = LegShareSquares[leg].Plus(squares[leg]);
        }
    }

    /// <summary>The sum of summaries of one scenario; an empty summary of no legs for none.</summary>
    public static LifeSummary Sum(IReadOnlyList<LifeSummary> parts)
    {
        var sum = new LifeSummary(parts.Count == 0 ? 0 : parts[0].LegShareSums.Length, parts.Count == 0 ? null : parts[0].Modes?.Empty());
        foreach (LifeSummary part in parts)
        {
            sum.Add(part);
        }

        return sum;
    }

    /// <summary>A copy that does not change with this one.</summary>
    public LifeSummary Copy() => Sum([this]);

    /// <summary>Empties the summary, to be filled again.</summary>
    public void Clear()
    {
        Damage.Clear();
        Life.Clear();
        Modes?.Clear();
        WithShares = 0;
        Array.Clear(LegShareSums);
        Array.Clear(LegShareSquares);
    }

    /// <summary>Adds sums as read from a file.</summary>
    public void AddShares(long rows, IReadOnlyList<ExactSum> sums, IReadOnlyList<ExactSum> squares)
    {
        WithShares += rows;
        for (int leg = 0; leg < LegShareSums.Length; leg++)
        {
            LegShareSums[leg] = LegShareSums[leg].Plus(sums[leg]);
            LegShareSquares[leg] = LegShareSquares[leg].Plus(squares[leg]);
        }
    }

    /// <summary>Adds another summary of the same scenario.</summary>
    public void Add(LifeSummary other)
    {
        Damage.Add(other.Damage);
        Life.Add(other.Life);
        if (other.Modes is { } modes)
        {
            Modes?.Add(modes);
        }

        AddShares(other.WithShares, other.LegShareSums, other.LegShareSquares);
    }

    /// <summary>The sums of one leg's share, for its mean and standard error.</summary>
    internal PowerSums LegShare(int leg) => new(WithShares, LegShareSums[leg].Value, LegShareSquares[leg].Value);
}
