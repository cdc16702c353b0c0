using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Yields;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>First yield of the housing under the largest load; on where a yield strength is stated.</summary>
internal sealed class YieldMode : AxleMode
{
    /// <summary>Its name.</summary>
    public static FailureMode Name { get; } = new("yield", "first yield");

    /// <inheritdoc/>
    public override FailureMode Mode => Name;

    /// <inheritdoc/>
    public override Quantity Scatter => Quantities.YieldScatter;

    /// <inheritdoc/>
    public override int? EndsWithWallOf => 0;

    /// <summary>The mode of a scenario; null where it is off.</summary>
    public static YieldMode? In(Scenario scenario) => scenario.Find(Quantities.YieldStrength) is null ? null : new();

    /// <inheritdoc/>
    public override ModeColumns CreateColumns(int capacity) => new YieldColumns(capacity);

    /// <inheritdoc/>
    public override void AddColumns(ColumnAssembly to, int place)
    {
        to.AddNominalStress(c => ((YieldColumns)c.Modes[place]).NominalStressMPaPerN);
        to.AddScaled(c => ((YieldColumns)c.Modes[place]).YieldMPa, 1, to.SourceOf(Quantities.YieldStrength));
    }
}
