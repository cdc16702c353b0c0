using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Documents;

/// <summary>The risk as JSON and as rows.</summary>
internal static class RiskDocument
{
    public static JsonForm<RiskResult> Form { get; } = new JsonForm<RiskResult>()
        .Number("required_km", "the required distance, km", r => r.RequiredKm)
        .Word("method", "how probabilities were estimated", Methods, r => Word(r.Method))
        .Text("method_reason", "why so", r => r.MethodReason)
        .NumberOrNull("median_factors_life_km", "life with every factor at its median, km", r => r.MedianFactorsLifeKm)
        .Probability("failure_probability_at_required", "failure probability by the required distance", r => r.AtRequired.Probability)
        .Interval("beta_at_required", "reliability index by the required distance", r => r.AtRequired.Beta)
        .List("failure_probability", "failure probability by distance", new JsonForm<DistanceRisk>()
            .Number("distance_km", "the distance, km", d => d.DistanceKm)
            .With(CommonForms.Probability, d => d.Probability)
            .NumberOrNull("beta", "reliability index", d => d.Beta.Estimate)
            .Word("method", "how it was estimated", Methods, d => Word(d.Method)), r => r.Distances)
        .List("rare_events", "one for each distance answered by importance sampling", RareEventDocument.Form, r => r.RareEvents)
        .List("modes", "the modes of failure; only where there are several", ModeDocument.OfRisk,
            r => r.Modes.IsEmpty ? null : r.Modes.Select(m => (m, r))).Optional()
        .Key("lives_km", new JsonShape.Map(new JsonShape.Number(), MayBeNull: true), "B lives, km, by name: `B10` is the distance by which 10 % have failed",
            r => new JsonObject(r.Lives.Select(l => KeyValuePair.Create(Name(l), Json.Number(l.LifeKm.Estimate)))))
        .Key("lives_km_intervals", new JsonShape.Map(new JsonShape.Object(CommonForms.Interval)), "the same with intervals",
            r => new JsonObject(r.Lives.Select(l => KeyValuePair.Create(Name(l), (JsonNode?)CommonForms.Interval.Write(l.LifeKm)))))
        .List("damage_by_leg", "each leg's share of the damage", new JsonForm<LegDamage>()
            .Text("leg", "the leg", l => l.Name)
            .With(CommonForms.Interval, l => l.Share), r => r.Legs)
        .List("crack_depth", "depth of the crack by distance, over the vehicles that have not failed by then; only where a crack is stated",
            new JsonForm<DepthAtDistance>()
                .Number("distance_km", "the distance, km", d => d.Km)
                .Interval("low", "the depth that 5 % do not reach, mm", d => d.Low)
                .Interval("median", "the median depth, mm", d => d.Median)
                .Interval("high", "the depth that 5 % pass, mm", d => d.High), r => r.Depths.IsEmpty ? null : r.Depths)
        .Optional()
        .Whole("crack_depth_vehicles", "the vehicles that these are of, drawn beside the run; only where a crack is stated",
            r => r.Depths.IsEmpty ? null : CrackDepths.Vehicles)
        .Optional();

    private static IReadOnlyList<string> Methods => ["auto", "crude", "conditional", "importance"];

    private static string Word(RiskMethod method) => method.ToString().ToLowerInvariant();

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
