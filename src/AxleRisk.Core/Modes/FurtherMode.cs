using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// A mode of failure beside fatigue of the first section, as a study knows it: what it is called, when it is on, and what is left to
/// chance. It fails once it has used up more than its scatter.
/// </summary>
internal abstract class FurtherMode
{
    // In the order of tables and files: to add a mode, add it here.
    private static readonly ImmutableArray<Func<Scenario, LoadMode?>> All = [YieldMode.In, BearingMode.In];

    /// <summary>Its name.</summary>
    public abstract FailureMode Mode { get; }

    /// <summary>The place of the section that fails in it, so that it is certain once no wall is left there; null for none.</summary>
    public abstract int? EndsWithWallOf { get; }

    /// <summary>Those of a scenario: the further sections, then the others.</summary>
    public static ImmutableArray<FurtherMode> Of(Scenario scenario) =>
        [.. scenario.Sections.Select((s, i) => new SectionMode(s, i + 1)), .. All.Select(find => find(scenario)).OfType<LoadMode>()];

    /// <summary>What is left to chance: how much it can use up, in the unit of its rate times km.</summary>
    public abstract Input ScatterIn(Scenario scenario);

    /// <summary>The chance that is left.</summary>
    public virtual ModeChance ChanceOf(Value scatter) => scatter is Value.Uncertain uncertain
        ? new ModeChance.Scatter(uncertain.Distribution) : new ModeChance.Certain(scatter.Nominal);
}

/// <summary>A mode of the loads of ride and suspension; the rate at which it uses up what it has is its <see cref="ModeColumns"/>'.</summary>
internal abstract class LoadMode : FurtherMode
{
    /// <summary>What is left to chance, as a quantity of the scenario.</summary>
    public abstract Quantity Scatter { get; }

    /// <inheritdoc/>
    public sealed override Input ScatterIn(Scenario scenario) => scenario.Find(Scatter)!;

    /// <summary>Its columns for a number of rows.</summary>
    public abstract ModeColumns CreateColumns(int capacity);

    /// <summary>Says how its columns are filled.</summary>
    /// <param name="to">Takes the steps.</param>
    /// <param name="place">Its place among <see cref="DamageColumns.Modes"/>.</param>
    public abstract void AddColumns(ColumnAssembly to, int place);
}
