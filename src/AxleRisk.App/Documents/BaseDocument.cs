using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Files;

namespace AxleRisk.App.Documents;

/// <summary>The base case as JSON and as rows.</summary>
internal static class BaseDocument
{
    /// <summary>The whole document of the command.</summary>
    public static JsonObject Of(ScenarioDocument document, BaseCaseResult result) =>
        AddTo(Json.Head("base", document), result).WithNotes(document);

    private static JsonObject AddTo(JsonObject document, BaseCaseResult result)
    {
        document["life_km"] = Json.Number(result.LifeKm);
        document["median_factors_life_km"] = Json.Number(result.MedianFactorsLifeKm);
        document["damage_per_km"] = Json.Number(result.DamagePerKm);
        document["stress_mpa_per_kn"] = Json.Number(result.StressPerKnMPa);
        document["body_bounce_hz"] = Json.Number(result.BodyBounceHz);
        document["wheel_hop_hz"] = Json.Number(result.WheelHopHz);
        document["sn_curve"] = $"{result.Curve.Catalogue} {result.Curve.Category}";
        document["sn_source"] = result.Curve.Source;
        document["legs"] = Json.List(result.Legs, l => new JsonObject
        {
            ["leg"] = l.Name,
            ["share"] = Json.Number(l.Share),
            ["speed_km_per_h"] = Json.Number(l.SpeedKmPerH),
            ["stress_rms_mpa"] = Json.Number(l.StressRmsMPa),
            ["upcrossings_per_s"] = Json.Number(l.UpcrossingsPerSecond),
            ["damage_share"] = Json.Number(l.DamageShare),
        });
        document["one_at_a_time"] = Json.List(result.Factors, f => new JsonObject
        {
            ["name"] = f.Factor.Name,
            ["low"] = Json.Number(f.Low),
            ["high"] = Json.Number(f.High),
            ["relative_life_at_low"] = Json.Number(f.LifeAtLow),
            ["relative_life_at_high"] = Json.Number(f.LifeAtHigh),
            ["relative_life_at_plus_10_percent"] = Json.Number(f.LifeAtPlusTenPercent),
        });
        document["evaluations"] = result.Evaluations;
        return document;
    }

    public static string[] Header { get; } =
        ["factor", "low", "high", "relative_life_at_low", "relative_life_at_high", "relative_life_at_plus_10_percent"];

    public static IEnumerable<string[]> Rows(BaseCaseResult result) => result.Factors.Select(f => (string[])
    [
        f.Factor.Name, Cells.Of(f.Low), Cells.Of(f.High), Cells.Of(f.LifeAtLow), Cells.Of(f.LifeAtHigh), Cells.Of(f.LifeAtPlusTenPercent),
    ]);
}
