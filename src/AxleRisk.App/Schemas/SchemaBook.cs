using System.Text.Json.Nodes;

namespace AxleRisk.App.Schemas;

/// <summary>All schemas by name.</summary>
internal static class SchemaBook
{
    /// <summary>The name of the scenario's.</summary>
    public const string Scenario = "scenario";

    private static readonly (string Name, Func<JsonObject> Make)[] All =
    [
        (Scenario, ScenarioSchema.Make),
        .. DocumentBook.All.Select(d => (d.Command, (Func<JsonObject>)(() => DocumentSchema.Make(d)))),
    ];

    /// <summary>The names, the scenario's first.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Select(s => s.Name)];

    /// <summary>The schema of a name.</summary>
    public static JsonObject Of(string name) => All.First(s => s.Name == name).Make();
}
