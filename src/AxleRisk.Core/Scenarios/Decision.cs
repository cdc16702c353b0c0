using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>A choice between the scenario as it is and what could be done about it, by its expected net cost.</summary>
public sealed record Decision
{
    /// <summary>
    /// What a failure costs, in the user's own unit: one that varies counts by its mean, one that is unknown is one value for all
    /// failures; null where it is not stated, and the fleet's claims are taken.
    /// </summary>
    public Value? FailureCost { get; init; }

    /// <summary>The number of vehicles, at least 1; null for that of the fleet, or one.</summary>
    public long? Vehicles { get; init; }

    /// <summary>The distance to which failures count, km; null for the required distance.</summary>
    public double? Km { get; init; }

    /// <summary>Whether failures count that the fleet's warranty covers, and not those by a distance.</summary>
    public bool UnderWarranty { get; init; }

    /// <summary>What could be done, by name; empty for each remedy alone.</summary>
    public ImmutableArray<Package> Packages { get; init; } = [];

    /// <summary>What a scenario lacks for a decision, and what would help, as the end of a sentence; null where all is there.</summary>
    public static string? MissingIn(Scenario scenario)
    {
        if (scenario.Decision is not { } decision)
        {
            return "there is no decision; state one under [decision]: what a failure costs";
        }

        if (decision.OptionsIn(scenario).IsEmpty)
        {
            return "there is nothing to decide between; state at least one remedy under [[remedies]], with its cost";
        }

        if (decision.UnderWarranty && scenario.Fleet is null)
        {
            return "decision.over = \"warranty\" needs a fleet; state one under [fleet], or over = \"distance\"";
        }

        if (decision.CostOfFailure(scenario) is null)
        {
            return "what a failure costs is not known; state decision.failure_cost";
        }

        return decision.OptionsIn(scenario).FirstOrDefault(o => o.Cost is null) is { } without
            ? $"the cost of {without.Name} is not known; state the cost of each remedy (0 where it costs nothing)" : null;
    }

    /// <summary>What a failure costs in a scenario; null where nothing is stated.</summary>
    public Value? CostOfFailure(Scenario scenario) => FailureCost ?? (UnderWarranty ? scenario.Fleet?.CostPerClaim : null);

    /// <summary>The number of vehicles in a scenario.</summary>
    public long VehiclesIn(Scenario scenario) => Vehicles ?? (UnderWarranty ? scenario.Fleet?.Vehicles : null) ?? 1;

    /// <summary>The options besides "as it is", in file order.</summary>
    public ImmutableArray<Package> OptionsIn(Scenario scenario) =>
        Packages.IsEmpty ? [.. scenario.Remedies.Select(r => new Package(r.Name, [r], null))] : Packages;
}

/// <summary>Remedies that are chosen together.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Remedies">The remedies, in the order they are applied.</param>
/// <param name="StatedCost">What it costs a vehicle where that is not the sum of its remedies.</param>
public sealed record Package(string Name, ImmutableArray<Remedy> Remedies, double? StatedCost)
{
    /// <summary>What it costs a vehicle; null where a remedy's cost is not stated.</summary>
    public double? Cost => StatedCost ?? Remedies.Aggregate((double?)0, (sum, r) => sum + r.Cost);

    /// <summary>The scenario with it.</summary>
    public Scenario ApplyTo(Scenario scenario) => Remedies.Aggregate(scenario, Remedy.Apply);
}
