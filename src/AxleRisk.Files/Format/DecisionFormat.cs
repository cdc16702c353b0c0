using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of a decision.</summary>
public static class DecisionFormat
{
    /// <summary>Remedies that are chosen together.</summary>
    public static TableFormat Package { get; } = new(
        "decision.packages", "Remedies chosen together, under a name of their own; with one or more, these are the options.",
        new("name", "name", "", new KeyKind.Line(40), "the name of the package, unique") { IsRequired = true, Start = "package" },
        new("remedies", "remedies", "", new KeyKind.Line(400), "names of remedies with ` + ` between, such as `\"8 mm tube + audited weld\"`")
        { IsRequired = true },
        new("cost", "cost", "", new KeyKind.Number(Domain.Any), "what it costs a vehicle, where that is not the sum of its remedies")
        { Otherwise = "the sum of its remedies' costs" });

    /// <summary>A measurement that could be made.</summary>
    public static TableFormat Measurement { get; } = new(
        "measurements", "A measurement that could still be made, of an uncertain, continuous input.",
        new("name", "name", "", new KeyKind.Line(40), "its name, unique") { IsRequired = true, Start = "measurement" },
        new("factor", "factor", "", new KeyKind.InputName(), "what would be measured") { IsRequired = true },
        new("sd", "accuracy", "", new KeyKind.Number(Domain.Positive), "accuracy: the standard deviation of the error of one reading")
        { IsRequired = true },
        new("number", "readings", "", new KeyKind.Whole(1, 100_000), "the number of independent readings, of which the mean is taken")
        { Otherwise = "1" },
        new("cost", "cost", "", new KeyKind.Number(Domain.NonNegative), "what all of them cost, in the unit of the remedies' costs")
        { Otherwise = "0" });

    /// <summary>The decision.</summary>
    public static TableFormat Decision { get; } = new(
        "decision", "A choice between the scenario as it is and its remedies, by expected net cost.",
        new("failure_cost", "cost of a failure", "", new KeyKind.Uncertain(Domain.NonNegative),
            "what one failure costs, in the unit of the remedies' costs; a distribution that varies counts by its mean, one that is unknown is one value for all failures")
        { Otherwise = "`fleet.cost_per_claim` with `over = \"warranty\"`, else needed", Start = "10000" },
        new("over", "failures that count", "", FormatWords.Of(FormatWords.DecisionSpans),
            "failures to `distance_km`, or those that the fleet's warranty covers")
        { Otherwise = "`\"distance\"`" },
        new("vehicles", "vehicles", "", new KeyKind.Whole(1, Core.Scenarios.Fleet.MostVehicles), "the number of vehicles that costs are told of")
        { Otherwise = "those of the fleet under its warranty, else 1" },
        new("distance_km", "distance", "km", new KeyKind.Number(Domain.Positive), "the distance to which failures count")
        { Otherwise = "`required_km`", BelongsTo = new("over", "distance") },
        FormatParts.Many(Package, RemedyFormat.Most, "packages"));
}
