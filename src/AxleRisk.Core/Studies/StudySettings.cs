using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Studies;

/// <summary>What decides the digits of a study besides its scenario.</summary>
/// <param name="Evaluations">How many evaluations of the damage model to spend, at least 1.</param>
/// <param name="Seed">The seed.</param>
/// <param name="Sampling">The name of the sampling plan, one of <see cref="SamplingPlan.Names"/>.</param>
public sealed record StudySettings(long Evaluations, ulong Seed, string Sampling)
{
    /// <summary>The seed used where none is given.</summary>
    public const ulong DefaultSeed = 1;

    /// <summary>Rows of a block: small enough for a core's cache, large enough to hide the overhead.</summary>
    public const int BlockSize = 256;
}
