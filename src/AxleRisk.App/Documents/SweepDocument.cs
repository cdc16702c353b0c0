using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Sweeps;

namespace AxleRisk.App.Documents;

/// <summary>A sweep as JSON and as rows.</summary>
internal static class SweepDocument
{
    public static JsonObject AddTo(JsonObject document, SweepResult result)
    {
        document["distance_km"] = result.DistanceKm;
        document["event_method"] = result.IsConditional ? "conditional" : "crude";
        document["failure_probability_as_stated"] = Json.Of(result.Stated.Probability);
        document["inputs"] = Json.List(result.Inputs, a => new JsonObject
        {
            ["name"] = a.Name,
            ["unit"] = a.Unit,
            ["stated"] = Json.Number(a.Stated),
        });
        document["points"] = Json.List(result.Points, p =>
        {
            var point = new JsonObject
            {
                ["values"] = new JsonObject(p.Values.Select((v, i) => KeyValuePair.Create(result.Inputs[i].Name, ValueOf(result, p, i)))),
                ["relative_life"] = Json.Number(p.RelativeLife),
                ["relative_damage"] = Json.Number(p.RelativeDamage),
                ["failure_probability"] = Json.Resolved(p.Case.Probability),
                ["difference"] = Json.Of(p.Case.Change!.Difference),
                ["ratio"] = Json.Of(p.Case.Change.Ratio),
            };
            if (p.Together is { } together)
            {
                point["together"] = Json.Of(together);
                point["life_together"] = Json.Number(p.LifeTogether!.Value);
            }

            return point;
        });
        return document;
    }

    public static string[] Header { get; } = ["first", "second", "relative_life", "relative_damage", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(SweepResult result) => result.Points.Select(p => (string[])
    [
        p.Values[0] ?? "", p.Values.Length > 1 ? p.Values[1] ?? "" : "", Cells.Of(p.RelativeLife), Cells.Of(p.RelativeDamage),
        Cells.Of(p.Case.Probability.Estimate), Cells.Of(p.Case.Probability.Low), Cells.Of(p.Case.Probability.High),
    ]);

    // As stated where it is not moved.
    private static JsonNode? ValueOf(SweepResult result, SweepPoint point, int input) => point.Values[input] is not { } text ? null
        : double.IsNaN(result.Inputs[input].Stated) ? JsonValue.Create(text) : Json.Number(point.Place[input]);
}
