using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>The vehicle's history in words.</summary>
internal static class HistoryText
{
    /// <summary>The stretches in one sentence; null where the scenario has none.</summary>
    public static string? Sentence(Scenario scenario) => scenario.History.IsEmpty ? null
        : $"The history: {string.Join("; ", scenario.History.Select(s => $"{Where(s)} {What(scenario, s)}"))}.";

    /// <summary>Which stretch's details are told of; null where the scenario has none.</summary>
    public static string? Told(int? place) =>
        place is { } told ? $"legs, stresses and frequencies are those of stretch {told}, the last" : null;

    /// <summary>Which stretch is driven in a simulation.</summary>
    public static string Driven(Scenario scenario, int place) =>
        $"Simulated is the vehicle of stretch {place} of its history, as it is where the stretch begins: {Where(scenario.History[place - 1])} {What(scenario, scenario.History[place - 1])}.";

    /// <summary>What is otherwise in a stretch.</summary>
    public static IEnumerable<string> Changes(Scenario scenario, Stretch stretch) =>
    [
        .. stretch.RenewsDampers ? ["dampers renewed"] : Array.Empty<string>(),
        .. stretch.Changes.Where(c => c is not Change.ToShare)
            .Select(c => Printable.Line($"{scenario.LabelOf(c.Input)} {DistributionText.Of(c)}{Unit(scenario, c)}")),
        .. stretch.Changes.OfType<Change.ToShare>().Select(c => $"{scenario.LabelOf(c.Input)} {Figures.Share(c.Share)}"),
    ];

    private static string What(Scenario scenario, Stretch stretch) =>
        Changes(scenario, stretch).ToArray() is { Length: > 0 } changes ? string.Join(", ", changes) : "as stated";

    private static string Where(Stretch stretch) => (stretch.FromKm, stretch.ToKm) switch
    {
        (0, double.PositiveInfinity) => "throughout",
        (0, var to) => $"to {Figures.Exact(to)} km",
        (var from, double.PositiveInfinity) => $"from {Figures.Exact(from)} km on",
        var (from, to) => $"from {Figures.Exact(from)} to {Figures.Exact(to)} km",
    };

    private static string Unit(Scenario scenario, Change change) => change is Change.ToValue { Value: Value.Certain }
        && scenario.Inputs.FirstOrDefault(i => i.Name == change.Input) is { Quantity.Unit.Length: > 0 } input
            ? $" {input.Quantity.Unit}" : "";
}
