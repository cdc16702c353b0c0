using AxleRisk.Core.Damage.Bearings;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>Fatigue of the wheel bearing; on where the scenario has one.</summary>
/// <param name="exponent">Its life exponent.</param>
internal sealed class BearingMode(double exponent) : AxleMode
{
    /// <summary>Its name.</summary>
    public static FailureMode Name { get; } = new("bearing", "wheel bearing");

    /// <inheritdoc/>
    public override FailureMode Mode => Name;

    /// <inheritdoc/>
    public override Quantity Scatter => Quantities.BearingScatter;

    /// <inheritdoc/>
    public override int? EndsWithWallOf => null;

    /// <summary>The mode of a scenario; null where it is off.</summary>
    public static BearingMode? In(Scenario scenario) => scenario.Bearing switch
    {
        BearingKind.Ball => new(BearingLife.BallExponent),
        BearingKind.Roller => new(BearingLife.RollerExponent),
        _ => null,
    };

    /// <inheritdoc/>
    public override ModeColumns CreateColumns(int capacity) => new BearingColumns(capacity, exponent);

    /// <inheritdoc/>
    public override void AddColumns(ColumnAssembly to, int place)
    {
        to.Add(
            c => ((BearingColumns)c.Modes[place]).LoadFactor,
            to.SourceOf(Quantities.BearingOverhang), to.SourceOf(Quantities.WheelOffset), to.SourceOf(Quantities.BearingSpread),
            (overhang, offset, spread, target) =>
            {
                for (int i = 0; i < target.Length; i++)
                {
                    target[i] = BearingLife.LoadFactor(overhang[i] + offset[i], spread[i]);
                }
            });
        to.AddScaled(c => ((BearingColumns)c.Modes[place]).RatingN, 1000, to.SourceOf(Quantities.BearingRating));
        to.Add(
            c => ((BearingColumns)c.Modes[place]).RevolutionsPerKm, to.SourceOf(Quantities.RollingRadius),
            (radius, target) =>
            {
                for (int i = 0; i < target.Length; i++)
                {
                    target[i] = 1e6 / (2 * Math.PI * radius[i]);
                }
            });
    }
}
