using System.Collections.Immutable;
using AxleRisk.Core.Damage;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>The modes of failure of a scenario, and whether it ages.</summary>
public sealed class ModeSet
{
    /// <summary>Where rates are evaluated if the vehicle ages, over the required distance: straight in between, constant beyond.</summary>
    private static readonly ImmutableArray<double> AgesOfRequired = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 5];

    internal ModeSet(Scenario scenario)
    {
        bool Has(Quantity quantity) => scenario.Find(quantity) is not null;
        Switches = new ModeSwitches(
            Has(Quantities.BumpClearance), Has(Quantities.YieldStrength),
            scenario.Bearing switch
            {
                BearingKind.Ball => BearingLife.BallExponent,
                BearingKind.Roller => BearingLife.RollerExponent,
                _ => 0,
            });
        Ages = Has(Quantities.DamperWear) || Has(Quantities.CorrosionRate);
        AgesKm = Ages ? [.. AgesOfRequired.Select(a => a * scenario.RequiredKm)] : [0];
        Modes =
        [
            FailureMode.Fatigue,
            .. Switches.Yield ? [FailureMode.Yield] : Array.Empty<FailureMode>(),
            .. Switches.Bearing ? [FailureMode.Bearing] : Array.Empty<FailureMode>(),
        ];
    }

    /// <summary>The modes that are on, in their order.</summary>
    public ImmutableArray<FailureMode> Modes { get; }

    /// <summary>Whether something wears or corrodes with distance.</summary>
    public bool Ages { get; }

    /// <summary>Whether fatigue is the only mode and nothing ages: life is a scale over one damage per km.</summary>
    public bool IsPlain => Modes.Length == 1 && !Ages;

    /// <summary>The distances at which rates are evaluated, rising from 0, km.</summary>
    internal ImmutableArray<double> AgesKm { get; }

    /// <summary>What is on beside plain fatigue.</summary>
    internal ModeSwitches Switches { get; }
}
