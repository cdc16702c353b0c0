using System.Text.Json.Nodes;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>A trip as JSON and as rows.</summary>
internal static class TripDocument
{
    public static JsonObject AddTo(JsonObject document, TripResult result)
    {
        document["summary"] = string.Join(" ", new[] { TripWords.Verdict(result), TripWords.Advice(result) }.Where(t => t.Length > 0));
        document["km"] = result.Km;
        document["already_driven_km"] = result.AlreadyDrivenKm;
        document["event_method"] = result.IsConditional ? "conditional" : "crude";
        document["reached_start"] = Json.Of(result.Reached);
        document["failure_probability"] = Json.Resolved(result.Probability);
        document["target_risk"] = result.Target is { } target ? Json.Number(target) : null;
        document["legs"] = Json.List(result.Legs, leg => new JsonObject
        {
            ["leg"] = leg.Name,
            ["km"] = leg.Km,
            ["end_km"] = leg.EndKm,
            ["failure_probability"] = Json.Resolved(leg.Conditional),
            ["share"] = Json.Of(leg.Share),
            ["cumulative"] = Json.Resolved(leg.Cumulative),
        });
        document["rare_events"] = Json.List(result.Rare, r =>
        {
            JsonObject row = RareEventDocument.Of(r.Answer);
            row.Insert(0, "leg", r.Leg);
            return row;
        });
        document["limits"] = Json.List(result.Limits, Limit);
        document["remedies"] = Json.List(result.Remedies, r => new JsonObject
        {
            ["name"] = r.Remedy.Name,
            ["cost"] = r.Remedy.Cost is double cost ? Json.Number(cost) : null,
            ["failure_probability"] = Json.Resolved(r.Probability),
            ["difference"] = Json.Of(r.Difference),
            ["ratio"] = Json.Of(r.Ratio),
            ["distinguishable"] = r.IsDistinct,
        });
        document["combinations"] = Json.List(result.Combinations, CombineDocument.Worst);
        document["searched"] = result.Searched is { } searched ? CombineDocument.Searched(searched) : null;
        document["evaluations_of_all_questions"] = result.AllEvaluations;
        return document;
    }

    public static string[] Header { get; } = ["figure", "of", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(TripResult result) =>
    [
        Cells.Row("reached_start", "", result.Reached),
        Cells.Row("failure_probability", "trip", result.Probability),
        .. result.Legs.Select(l => Cells.Row("failure_probability", l.Name, l.Conditional)),
        .. result.Legs.Select(l => Cells.Row("share", l.Name, l.Share)),
        .. result.Legs.Select(l => Cells.Row("cumulative", l.Name, l.Cumulative)),
        .. result.Limits.SelectMany(Rows),
        .. result.Remedies.Select(r => Cells.Row("remedy", r.Remedy.Name, r.Probability)),
        .. result.Remedies.Select(r => Cells.Row("remedy_ratio", r.Remedy.Name, r.Ratio)),
        .. result.Combinations.Select(c => Cells.Row("combination", RangeWords.OfKeys(c.Members), c.Probability)),
    ];

    private static JsonObject Limit(TripLimit limit) => new()
    {
        ["of"] = NameOf(limit.Lever),
        ["leg"] = limit.Lever.Leg,
        ["unit"] = limit.Lever.Unit,
        ["planned"] = Json.Number(limit.Lever.Planned),
        ["tried_from"] = limit.Lever.Low,
        ["tried_to"] = limit.Lever.High,
        ["words"] = TripWords.Limit(limit),
        ["windows"] = Json.List(limit.Windows, w => new JsonObject { ["from"] = End(w.From), ["to"] = End(w.To) }),
        ["best_at"] = limit.BestAt,
        ["least_failure_probability"] = Json.Of(limit.Least),
    };

    private static JsonObject? End(Interval? end) => end is { } at ? Json.Of(at) : null;

    private static IEnumerable<string[]> Rows(TripLimit limit) => limit.Windows.SelectMany(w => new (string Figure, Interval? End)[]
    {
        ("limit_from", w.From), ("limit_to", w.To),
    }).Where(e => e.End is not null)
        .Select(e => Cells.Row(e.Figure, NameOf(limit.Lever) + (limit.Lever.Leg is { } leg ? $" {leg}" : ""), e.End!.Value));

    private static string NameOf(TripLever lever) => lever.Kind switch
    {
        TripLeverKind.AllSpeeds => "all_speeds",
        TripLeverKind.Load => "load",
        _ => "leg_speed",
    };
}
