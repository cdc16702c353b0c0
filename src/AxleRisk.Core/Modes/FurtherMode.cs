using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// A mode of failure beside fatigue of the first section, as a study knows it: what it is called and what is left to chance. It fails once
/// it has used up more than its scatter.
/// </summary>
internal abstract class FurtherMode
{
    /// <summary>Its name.</summary>
    public abstract FailureMode Mode { get; }

    /// <summary>The place of the section that fails in it, so that it is certain once no wall is left there; null for none.</summary>
    public abstract int? EndsWithWallOf { get; }

    /// <summary>What is left to chance: how much it can use up, in the unit of its rate times km.</summary>
    public abstract Input ScatterIn(Scenario scenario);

    /// <summary>The chance that is left.</summary>
    public virtual ModeChance ChanceOf(Value scatter) => scatter is Value.Uncertain uncertain
        ? new ModeChance.Scatter(uncertain.Distribution) : new ModeChance.Certain(scatter.Nominal);
}
