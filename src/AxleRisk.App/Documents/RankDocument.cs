using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Ranking;

namespace AxleRisk.App.Documents;

/// <summary>The ranking as JSON and as rows.</summary>
internal static class RankDocument
{
    public static JsonObject AddTo(JsonObject document, RankResult result)
    {
        document["required_km"] = result.RequiredKm;
        document["failure_probability_at_required"] = Json.Of(result.Probability);
        document["rows"] = result.Rows;
        document["event_method"] = result.IsConditional ? "conditional" : "crude";
        document["factors"] = Json.List(result.Factors, Factor);
        return document;
    }

    public static string[] Header { get; } =
    [
        "factor", "unit", "knowledge", "life_first", "life_first_low", "life_first_high", "life_total", "life_total_low", "life_total_high",
        "failure_first", "failure_first_low", "failure_first_high", "failure_total", "failure_total_low", "failure_total_high",
        "pinned_probability", "pinned_at_5_percent", "pinned_at_95_percent",
    ];

    public static IEnumerable<string[]> Rows(RankResult result) => result.Factors.Select(f => (string[])
    [
        f.Factor.Name, f.Factor.Unit, f.Factor.Knowledge.ToString().ToLowerInvariant(), .. Pair(f.Life), .. Pair(f.Failure),
        Cells.Of(f.AtNominal.Probability.Estimate), At(f.AtLow), At(f.AtHigh),
    ]);

    private static IEnumerable<string> Pair(SobolPair pair) =>
        new[] { pair.First, pair.Total }.SelectMany(i => new[] { Cells.Of(i.Estimate), Cells.Of(i.Low), Cells.Of(i.High) });

    private static string At(Pinned? pinned) => pinned is null ? "" : Cells.Of(pinned.Probability.Estimate);

    private static JsonObject Factor(RankedFactor f) => new()
    {
        ["name"] = f.Factor.Name,
        ["unit"] = f.Factor.Unit,
        ["knowledge"] = f.Factor.Knowledge.ToString().ToLowerInvariant(),
        ["distribution"] = f.Factor.Description,
        ["ranked_with"] = Json.List(f.RankedWith, n => JsonValue.Create(n)),
        ["life"] = Indices(f.Life),
        ["failure"] = Failure(f),
    };

    private static JsonObject Failure(RankedFactor f)
    {
        JsonObject failure = Indices(f.Failure);
        failure["pinned_probability"] = Json.Number(f.AtNominal.Probability.Estimate);
        failure["pinned"] = Held(f.AtNominal);
        failure["at_5_percent"] = f.AtLow is { } low ? Held(low) : null;
        failure["at_95_percent"] = f.AtHigh is { } high ? Held(high) : null;
        failure["direction"] = f.Direction;
        return failure;
    }

    private static JsonObject Indices(SobolPair pair) => new() { ["first"] = Json.Of(pair.First), ["total"] = Json.Of(pair.Total) };

    private static JsonObject Held(Pinned pinned)
    {
        JsonObject held = Json.Of(pinned.Probability);
        held.Insert(0, "value", Json.Number(pinned.Value));
        return held;
    }
}
