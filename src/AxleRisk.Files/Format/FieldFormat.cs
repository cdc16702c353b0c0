using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables that name what was seen: records of the field and gauge runs.</summary>
public static class FieldFormat
{
    /// <summary>The records of the field.</summary>
    public static TableFormat Field { get; } = new(
        "field", "What is known of vehicles in the field; `learn` weighs it.",
        new("file", "file", "", new KeyKind.Text(), "a CSV file in the folder of the scenario or below, a line for each vehicle, or for several that are alike")
        { IsRequired = true, Start = "returns.csv" },
        new("until_km", "end of the data", "km", new KeyKind.Number(Domain.Positive),
            "no vehicle can have gone further: a record beyond is an error"));

    /// <summary>The gauge runs.</summary>
    public static TableFormat Gauges { get; } = new(
        "gauges", "What gauges on test vehicles say of damage or stress; `learn` weighs it.",
        new KeyFormat("file", "file", "", new KeyKind.Text(), "a CSV file in the folder of the scenario or below, one line a run")
        { IsRequired = true, Start = "gauges.csv" });
}
