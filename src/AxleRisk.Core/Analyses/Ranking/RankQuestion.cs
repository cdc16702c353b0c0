namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>How the shares of a ranking are found, and when they are good enough.</summary>
public sealed record RankQuestion
{
    /// <summary>The half width of the 95 % interval of a share that a run goes for where nothing else is asked.</summary>
    public const double UsualHalfWidth = 0.01;

    /// <summary>
    /// Whether all subsets of the factors are run, rather than random orders: exact for each pair of rows, and many times as dear
    /// for the same width.
    /// </summary>
    public bool AllSubsets { get; init; }

    /// <summary>
    /// The run ends when the 95 % interval of no factor's share is wider than this to either side, a fraction; 0 spends all
    /// evaluations.
    /// </summary>
    public double HalfWidth { get; init; } = UsualHalfWidth;

    /// <summary>The usual question, a stated number of evaluations, or all subsets.</summary>
    /// <param name="allSubsets">Whether all subsets are asked for.</param>
    /// <param name="evaluationsStated">Whether the number of evaluations is.</param>
    public static RankQuestion Of(bool allSubsets, bool evaluationsStated) =>
        new() { AllSubsets = allSubsets, HalfWidth = allSubsets || evaluationsStated ? 0 : UsualHalfWidth };
}
