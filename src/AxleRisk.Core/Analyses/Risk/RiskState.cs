using System.Collections.Immutable;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// A risk study, or a part of one, as far as it has come: what is written to a file to go on later or to be joined with other
/// parts. Joining is adding of whole numbers, so that the whole has the same digits however it was cut.
/// </summary>
/// <param name="Settings">The settings of the whole study.</param>
/// <param name="FirstBlock">The first block of this part.</param>
/// <param name="EndBlock">The block after its last.</param>
/// <param name="NextBlock">The first block not yet done; <paramref name="EndBlock"/> where the part is finished.</param>
/// <param name="Replicates">The summary of each replicate of the sampling plan.</param>
public sealed record RiskState(
    StudySettings Settings, long FirstBlock, long EndBlock, long NextBlock, ImmutableArray<LifeSummary> Replicates)
{
    /// <summary>Whether all of its blocks are done.</summary>
    public bool IsFinished => NextBlock == EndBlock;
}

/// <summary>A part of a study: the <paramref name="Number"/>th of <paramref name="Of"/> nearly equal runs of sample numbers.</summary>
/// <param name="Number">The part's number, from 1.</param>
/// <param name="Of">The number of parts.</param>
public readonly record struct StudyPart(int Number, int Of)
{
    /// <summary>The whole study.</summary>
    public static StudyPart Whole { get; } = new(1, 1);
}
