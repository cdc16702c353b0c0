using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// How a two-level sample is divided: replicates that are independent of one another and give the intervals; in each, outer
/// draws of what the whole fleet shares; for each of them, inner draws of what differs between vehicles.
/// </summary>
/// <param name="Outer">Outer draws of a replicate.</param>
/// <param name="Inner">Inner draws of an outer one.</param>
/// <param name="Settings">Seed and sampling plan.</param>
internal sealed record NestedPlan(int Outer, int Inner, StudySettings Settings)
{
    /// <summary>Independent replicates: 15 degrees of freedom.</summary>
    public const int Replicates = 16;

    /// <summary>Fewer evaluations make no two levels.</summary>
    public const long LeastEvaluations = 1024;

    /// <summary>
    /// Every vehicle of the sample is kept: in 16 bytes, or in 8 a mode of failure and age (five where it ages) where there are several.
    /// </summary>
    public const long MostEvaluations = 20_000_000;

    /// <summary>
    /// The independent parts of the inner draws of one outer draw: two tell the error of their mean. One where nothing is shared
    /// and there is no second level.
    /// </summary>
    public int Parts { get; init; } = 1;

    /// <summary>Inner draws of a part.</summary>
    public int InnerOfPart => Inner / Parts;

    /// <summary>All outer draws.</summary>
    public int Draws => Replicates * Outer;

    /// <summary>All evaluations.</summary>
    public long Rows => (long)Draws * Inner;

    /// <summary>
    /// Divides a number of evaluations: as many outer as inner draws, for the error of both falls alike, the inner ones a power
    /// of two, which low-discrepancy points ask for. Without anything shared one outer draw a replicate is enough.
    /// </summary>
    /// <exception cref="StudyException">There are too few or too many evaluations.</exception>
    public static NestedPlan Of(StudySettings settings, bool hasShared)
    {
        long evaluations = settings.Evaluations;
        if (evaluations is < LeastEvaluations or > MostEvaluations)
        {
            throw new StudyException(
                $"a fleet needs {LeastEvaluations:#,0} to {MostEvaluations:#,0} evaluations: choose --evaluations in this range");
        }

        long ofReplicate = evaluations / Replicates;
        int inner = hasShared ? 1 << (int)Math.Floor(Math.Log2(Math.Sqrt(ofReplicate))) : (int)ofReplicate;
        return new NestedPlan((int)(ofReplicate / inner), inner, settings) { Parts = hasShared ? 2 : 1 };
    }

    /// <summary>Whether a factor has one value for the whole fleet.</summary>
    public static bool IsShared(Factor factor) => factor.Knowledge == Knowledge.Unknown;
}
