using AxleRisk.Core.Distributions;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// Fatigue of a further checked section: the same moments of the force as at the first, times its own stress, on its own S-N curve.
/// </summary>
/// <param name="section">The section.</param>
/// <param name="place">Its place, 1 for the first of the further ones.</param>
internal sealed class SectionMode(CheckedSection section, int place) : FurtherMode
{
    /// <inheritdoc/>
    public override FailureMode Mode { get; } = NameOf(section);

    /// <inheritdoc/>
    public override int? EndsWithWallOf => place;

    /// <summary>The name of the mode.</summary>
    public static FailureMode NameOf(CheckedSection section) => new($"{CheckedSection.Table}.{section.Name}", $"fatigue at {section.Name}");

    /// <inheritdoc/>
    public override Input ScatterIn(Scenario scenario) => scenario.Find(Quantities.SectionLifeScatter, section)!;

    /// <inheritdoc/>
    public override ModeChance ChanceOf(Value scatter) => scatter is Value.Uncertain { Distribution: Lognormal lognormal }
        ? new ModeChance.Fatigue(LifeScale.Of(lognormal)) : base.ChanceOf(scatter);
}
