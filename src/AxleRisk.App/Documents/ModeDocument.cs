using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Documents;

/// <summary>The modes of failure as JSON and as rows.</summary>
internal static class ModeDocument
{
    public static JsonObject Of(ModeRisk mode, RiskResult result) => new()
    {
        ["mode"] = Name(mode),
        ["fails_first"] = new JsonArray([.. result.Distances.Select((d, i) => (JsonNode)new JsonObject
        {
            ["distance_km"] = d.DistanceKm,
            ["estimate"] = Json.Number(mode.First[i]),
        })]),
        ["failure_probability_without"] = Json.Number(mode.Without),
    };

    public static JsonObject Of(ModeOfFailures mode) => new()
    {
        ["mode"] = mode.Mode.Key,
        ["fails_first"] = Json.Of(mode.First),
        ["failure_probability_without"] = Json.Of(mode.Without),
    };

    public static IEnumerable<string[]> Rows(RiskResult result) =>
        result.Modes.SelectMany(m => result.Distances.Select((d, i) =>
            new[] { $"fails_first_{Name(m)}", Cells.Of(d.DistanceKm), Cells.Of(m.First[i]), "", "" }));

    private static string Name(ModeRisk mode) => mode.Mode.Key;
}
