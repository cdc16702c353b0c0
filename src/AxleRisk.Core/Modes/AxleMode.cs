using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// A further mode of the axle's own model: when it is on, and where its input comes from. The rate at which it uses up what it can is its
/// <see cref="ModeColumns"/>'.
/// </summary>
internal abstract class AxleMode : FurtherMode
{
    // In the order of tables and files: to add a mode, add it here.
    private static readonly ImmutableArray<Func<Scenario, AxleMode?>> All = [YieldMode.In, BearingMode.In];

    /// <summary>Those of a scenario.</summary>
    public static ImmutableArray<AxleMode> Of(Scenario scenario) => [.. All.Select(find => find(scenario)).OfType<AxleMode>()];

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
