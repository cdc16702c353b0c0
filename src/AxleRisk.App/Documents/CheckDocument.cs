using System.Text.Json.Nodes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.App.Documents;

/// <summary>A checked scenario as JSON and as rows.</summary>
internal static class CheckDocument
{
    /// <summary>The whole document of the command.</summary>
    public static JsonObject Of(ScenarioDocument document, FactorSet factors) =>
        AddTo(Json.Head("check", document), document.Scenario, factors).WithNotes(document);

    private static JsonObject AddTo(JsonObject document, Scenario scenario, FactorSet factors)
    {
        document["required_km"] = scenario.RequiredKm;
        document["factors"] = Json.List(factors.Factors, f => new JsonObject
        {
            ["name"] = f.Name,
            ["label"] = f.Label,
            ["unit"] = f.Unit,
            ["knowledge"] = f.Knowledge.ToString().ToLowerInvariant(),
            ["distribution"] = f.Description,
            ["assumed"] = IsAssumed(f),
            ["p5"] = Json.Number(Point(f, 0.05)),
            ["p50"] = Json.Number(Point(f, 0.5)),
            ["p95"] = Json.Number(Point(f, 0.95)),
        });
        document["certain"] = Json.List(scenario.Inputs.Where(i => i.Value is Value.Certain), i => new JsonObject
        {
            ["name"] = i.Name,
            ["label"] = i.Label,
            ["unit"] = i.Quantity.Unit,
            ["value"] = Json.Number(i.Value.Nominal),
            ["default"] = i.IsDefault,
        });
        if (scenario.Bearing is { } kind)
        {
            document["bearing_kind"] = kind.ToString().ToLowerInvariant();
        }

        return document;
    }

    public static string[] Header { get; } = ["factor", "unit", "knowledge", "distribution", "p5", "p50", "p95"];

    public static IEnumerable<string[]> Rows(FactorSet factors) => factors.Factors.Select(f => (string[])
    [
        f.Name, f.Unit, f.Knowledge.ToString().ToLowerInvariant(), f.Description,
        Cells.Of(Point(f, 0.05)), Cells.Of(Point(f, 0.5)), Cells.Of(Point(f, 0.95)),
    ]);

    private static bool IsAssumed(Factor f) => f is ScalarFactor { Input.IsDefault: true };

    private static double Point(Factor f, double p) => f.Distribution?.Quantile(p) ?? double.NaN;
}
