using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>A further mode of a damage model that the scenario brings.</summary>
internal sealed class OwnMode(ModelMode mode) : FurtherMode
{
    /// <inheritdoc/>
    public override FailureMode Mode { get; } = new(mode.Key, mode.Words);

    /// <inheritdoc/>
    public override Input ScatterIn(Scenario scenario) => scenario.Find(mode.Scatter)!;

    /// <inheritdoc/>
    public override int? EndsWithWallOf => null;
}
