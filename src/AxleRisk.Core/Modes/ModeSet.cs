using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>The modes of failure of a scenario, and whether it ages.</summary>
public sealed class ModeSet
{
    internal ModeSet(Scenario scenario)
    {
        bool Has(Quantity quantity) => scenario.Model is null && scenario.Find(quantity) is not null;
        OfAxle = scenario.Model is null ? AxleMode.Of(scenario) : [];
        Further = scenario.Model is { } own ? [.. own.FurtherModes.Select(m => new OwnMode(m))]
            : [.. scenario.Sections.Select((s, i) => new SectionMode(s, i + 1)), .. OfAxle];
        Modes = [FirstOf(scenario), .. Further.Select(m => m.Mode)];
        Wears = Has(Quantities.DamperWear);
        Ages = scenario.Model?.Ages ?? (Wears || Has(Quantities.CorrosionRate)
            || scenario.Sections.Any(s => Corrodes(scenario, s)));
        IsInStretches = scenario.Age is not null || !Stretches.Of(scenario).IsEmpty;
        Layout = new DamageLayout(scenario.Legs.Length)
        {
            HasBumpStop = Has(Quantities.BumpClearance),
            Corrodes = Has(Quantities.CorrosionRate) && scenario.Shape != SectionShape.Given,
            Sections =
            [
                .. scenario.Sections.Select(s => new SectionLayout(
                    [.. DetailCurves.All(s.Detail).Select(c => c.Mean)], Corrodes(scenario, s))),
            ],
            HasRatios = scenario.Sections.Length > 0 && (scenario.Find(Quantities.DamageRatio)?.Value is not (null or Value.Certain(1))
                || scenario.Inputs.Any(i => i.Quantity == Quantities.LegDamageRatio)),
            Modes = [.. OfAxle.Select(m => (Func<int, ModeColumns>)m.CreateColumns)],
        };
    }

    /// <summary>The modes that are on, fatigue first.</summary>
    public ImmutableArray<FailureMode> Modes { get; }

    /// <summary>Whether something wears or corrodes with distance.</summary>
    public bool Ages { get; }

    /// <summary>Whether its use is one of stretches, or holds in one of them alone.</summary>
    internal bool IsInStretches { get; }

    /// <summary>Whether fatigue is the only mode and nothing changes with distance: life is a scale over one damage per km.</summary>
    public bool IsPlain => Modes.Length == 1 && !Ages && !IsInStretches;

    /// <summary>Whether the ride changes with distance, and not the stress alone.</summary>
    internal bool Wears { get; }

    /// <summary>The modes beside fatigue.</summary>
    internal ImmutableArray<FurtherMode> Further { get; }

    /// <summary>Those of them that have columns of their own in the axle's damage model.</summary>
    internal ImmutableArray<AxleMode> OfAxle { get; }

    /// <summary>What of the axle's damage model is asked for.</summary>
    internal DamageLayout Layout { get; }

    private static FailureMode FirstOf(Scenario scenario) => scenario.Sections.IsEmpty
        ? FailureMode.Fatigue : FailureMode.Fatigue with { Words = "fatigue at the axle's first section" };

    private static bool Corrodes(Scenario scenario, CheckedSection section) =>
        section.Shape != SectionShape.Given && SectionSteps.InputOf(scenario, section, Quantities.CorrosionRate) is not null;
}
