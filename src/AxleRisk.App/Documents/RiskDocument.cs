using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Documents;

/// <summary>The risk as JSON and as rows.</summary>
internal static class RiskDocument
{
    public static JsonObject AddTo(JsonObject document, RiskResult result)
    {
        document["required_km"] = result.RequiredKm;
        document["method"] = result.Method.ToString().ToLowerInvariant();
        document["method_reason"] = result.MethodReason;
        document["median_factors_life_km"] = Json.Number(result.MedianFactorsLifeKm);
        document["failure_probability_at_required"] = Json.Resolved(result.AtRequired.Probability);
        document["beta_at_required"] = Json.Of(result.AtRequired.Beta);
        document["failure_probability"] = Json.List(result.Distances, d =>
        {
            JsonObject row = Json.Resolved(d.Probability);
            row.Insert(0, "distance_km", d.DistanceKm);
            row["beta"] = Json.Number(d.Beta.Estimate);
            row["method"] = d.Method.ToString().ToLowerInvariant();
            return row;
        });
        document["rare_events"] = Json.List(result.RareEvents, RareEventDocument.Of);
        if (!result.Modes.IsEmpty)
        {
            document["modes"] = Json.List(result.Modes, m => ModeDocument.Of(m, result));
        }

        document["lives_km"] = new JsonObject(result.Lives.Select(l => KeyValuePair.Create(Name(l), Json.Number(l.LifeKm.Estimate))));
        document["lives_km_intervals"] = new JsonObject(
            result.Lives.Select(l => KeyValuePair.Create<string, JsonNode?>(Name(l), Json.Of(l.LifeKm))));
        document["damage_by_leg"] = Json.List(result.Legs, l =>
        {
            JsonObject row = Json.Of(l.Share);
            row.Insert(0, "leg", l.Name);
            return row;
        });
        return document;
    }

    public static string[] Header { get; } = ["figure", "of", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(RiskResult result) =>
    [
        .. CurveRows(result),
        .. ModeDocument.Rows(result),
        .. result.Lives.Select(l => Cells.Row("life_km", Name(l), l.LifeKm)),
        ["life_km", "median factors", Cells.Of(result.MedianFactorsLifeKm), "", ""],
        .. result.Legs.Select(l => Cells.Row("damage_share", l.Name, l.Share)),
    ];

    /// <summary>The rows of the failure probability alone.</summary>
    public static IEnumerable<string[]> CurveRows(RiskResult result) =>
        result.Distances.Select(d => Cells.Row("failure_probability", Cells.Of(d.DistanceKm), d.Probability));

    private static string Name(LifeQuantile life) => $"B{life.Percent:0.#}";
}
