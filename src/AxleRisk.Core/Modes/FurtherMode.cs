using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// A mode of failure beside fatigue, as a study knows it: what it is called, when it is on, where its input comes from, and what is left to
/// chance. It fails once it has used up more than its scatter; the rate at which it does so is its <see cref="ModeColumns"/>'.
/// </summary>
internal abstract class FurtherMode
{
    // In the order of tables and files: to add a mode, add it here.
    private static readonly ImmutableArray<Func<Scenario, FurtherMode?>> All = [YieldMode.In, BearingMode.In];

    /// <summary>Its name.</summary>
    public abstract FailureMode Mode { get; }

    /// <summary>What is left to chance: how much it can use up, in the unit of its rate times km.</summary>
    public abstract Quantity Scatter { get; }

    /// <summary>Whether the housing fails in it, so that it is certain once no wall is left.</summary>
    public abstract bool EndsWithWall { get; }

    /// <summary>Those of a scenario.</summary>
    public static ImmutableArray<FurtherMode> Of(Scenario scenario) => [.. All.Select(find => find(scenario)).OfType<FurtherMode>()];

    /// <summary>Its columns for a number of rows.</summary>
    public abstract ModeColumns CreateColumns(int capacity);

    /// <summary>Says how its columns are filled.</summary>
    /// <param name="to">Takes the steps.</param>
    /// <param name="place">Its place among <see cref="DamageColumns.Modes"/>.</param>
    public abstract void AddColumns(ColumnAssembly to, int place);
}
