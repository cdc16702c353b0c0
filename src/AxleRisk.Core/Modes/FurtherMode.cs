using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// A mode of failure beside fatigue, as a study knows it: what it is called and what is left to chance. It fails once it has used up more
/// than its scatter.
/// </summary>
internal abstract class FurtherMode
{
    /// <summary>Its name.</summary>
    public abstract FailureMode Mode { get; }

    /// <summary>What is left to chance: how much it can use up, in the unit of its rate times km.</summary>
    public abstract Quantity Scatter { get; }

    /// <summary>Whether the housing fails in it, so that it is certain once no wall is left.</summary>
    public abstract bool EndsWithWall { get; }
}
