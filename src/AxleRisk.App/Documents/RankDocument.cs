using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>The ranking as JSON and as rows.</summary>
internal static class RankDocument
{
    public static JsonObject AddTo(JsonObject document, RankResult result)
    {
        document["required_km"] = result.RequiredKm;
        HeadlineDocument.AddTo(document, result.Headline, result.Probability);
        document["rows"] = result.Rows;
        document["event_method"] = result.IsConditional ? "conditional" : "crude";
        document["share_method"] = result.ShareMethod == ShareMethod.AllSubsets ? "all subsets" : "random orders";
        document["share_pairs"] = result.SharePairs;
        document["share_half_width"] = Json.Number(result.WidestHalf);
        document["share_half_width_asked"] = result.HalfWidthAsked == 0 ? null : Json.Number(result.HalfWidthAsked);
        document["by_knowledge"] = Json.List(result.ByKnowledge, k => new JsonObject
        {
            ["knowledge"] = k.Knowledge.ToString().ToLowerInvariant(),
            ["factors"] = k.Factors,
            ["failure_share"] = Json.Of(k.Failure),
            ["life_share"] = Json.Of(k.Life),
        });
        document["damage_by_leg_of_failures"] = Json.List(result.Legs, l =>
        {
            JsonObject leg = Json.Of(l.DamageShare);
            leg.Insert(0, "leg", l.Name);
            return leg;
        });
        if (!result.Modes.IsEmpty)
        {
            document["modes"] = Json.List(result.Modes, ModeDocument.Of);
        }

        document["factors"] = Json.List(result.Factors, Factor);
        return document;
    }

    public static string[] Header { get; } =
    [
        "factor", "unit", "knowledge", "life_first", "life_first_low", "life_first_high", "life_total", "life_total_low", "life_total_high",
        "failure_first", "failure_first_low", "failure_first_high", "failure_total", "failure_total_low", "failure_total_high",
        "pinned_probability", "pinned_at_5_percent", "pinned_at_95_percent",
        "place", "tied", "failure_share", "failure_share_low", "failure_share_high", "life_share", "life_share_low", "life_share_high",
    ];

    public static IEnumerable<string[]> Rows(RankResult result) => result.Factors.Select(f => (string[])
    [
        f.Factor.Name, f.Factor.Unit, f.Factor.Knowledge.ToString().ToLowerInvariant(), .. Pair(f.Life), .. Pair(f.Failure),
        Cells.Of(f.AtNominal.Probability.Estimate), At(f.AtLow), At(f.AtHigh),
        $"{f.Place}", f.IsTied ? "yes" : "no", .. Three(f.FailureShare), .. Three(f.LifeShare),
    ]);

    private static IEnumerable<string> Pair(SobolPair pair) => [.. Three(pair.First), .. Three(pair.Total)];

    private static string[] Three(Interval i) => [Cells.Of(i.Estimate), Cells.Of(i.Low), Cells.Of(i.High)];

    private static string At(Pinned? pinned) => pinned is null ? "" : Cells.Of(pinned.Probability.Estimate);

    private static JsonObject Factor(RankedFactor f) => new()
    {
        ["name"] = f.Factor.Name,
        ["unit"] = f.Factor.Unit,
        ["knowledge"] = f.Factor.Knowledge.ToString().ToLowerInvariant(),
        ["distribution"] = f.Factor.Description,
        ["ranked_with"] = Json.List(f.RankedWith, o => JsonValue.Create(o.Name)),
        ["place"] = f.Place,
        ["tied"] = f.IsTied,
        ["life"] = Indices(f.LifeShare, f.Life),
        ["failure"] = Failure(f),
    };

    private static JsonObject Failure(RankedFactor f)
    {
        JsonObject failure = Indices(f.FailureShare, f.Failure);
        failure["pinned_probability"] = Json.Number(f.AtNominal.Probability.Estimate);
        failure["pinned"] = Held(f.AtNominal);
        failure["at_5_percent"] = f.AtLow is { } low ? Held(low) : null;
        failure["at_95_percent"] = f.AtHigh is { } high ? Held(high) : null;
        failure["direction"] = f.Direction;
        return failure;
    }

    private static JsonObject Indices(Interval share, SobolPair pair) =>
        new() { ["share"] = Json.Of(share), ["first"] = Json.Of(pair.First), ["total"] = Json.Of(pair.Total) };

    private static JsonObject Held(Pinned pinned)
    {
        JsonObject held = Json.Of(pinned.Probability);
        held.Insert(0, "value", Json.Number(pinned.Value));
        held["ratio"] = Json.Of(pinned.Ratio);
        return held;
    }
}
