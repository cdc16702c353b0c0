using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>Histories of scenarios, invented.</summary>
internal static class Histories
{
    /// <summary>A scenario that is as it states to a distance, and then changed.</summary>
    public static Scenario From(Scenario scenario, double km, params Change[] changes) =>
        Of(scenario, ([], km), (changes, double.PositiveInfinity));

    /// <summary>A scenario with stretches: what each changes, and where it ends.</summary>
    public static Scenario Of(Scenario scenario, params (Change[] Changes, double ToKm)[] stretches) => scenario with
    {
        History = [.. stretches.Select((s, i) => new Stretch(i == 0 ? 0 : stretches[i - 1].ToKm, s.ToKm, [.. s.Changes]))],
    };
}
