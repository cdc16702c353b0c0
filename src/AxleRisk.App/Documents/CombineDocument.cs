using System.Text.Json.Nodes;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>Combined effects as JSON and as rows.</summary>
internal static class CombineDocument
{
    public static JsonObject AddTo(JsonObject document, CombineResult result)
    {
        document["required_km"] = result.RequiredKm;
        HeadlineDocument.AddTo(document, result.Headline, result.Probability);
        document["event_method"] = result.IsConditional ? "conditional" : "crude";
        document["ranges"] = Json.List(result.Ranges, r =>
        {
            JsonObject range = Range(r);
            range["probability"] = Json.Of(r.Probability);
            return range;
        });
        document["combinations"] = Json.List(result.Combinations, Worst);
        document["pairs"] = Json.List(result.Pairs, Pair);
        document["interactions"] = Json.List(result.Interactions, p => new JsonObject
        {
            ["first"] = p.First,
            ["second"] = p.Second,
            ["second_order"] = Json.Of(p.SecondOrder),
            ["shapley_interaction"] = Json.Of(p.Shapley),
        });
        document["searched"] = Searched(result.Searched);
        return document;
    }

    public static string[] Header { get; } =
    [
        "kind", "members", "probability", "probability_low", "probability_high", "lift", "coverage", "likelihood", "rows",
        "multiplied", "multiplied_low", "multiplied_high", "beyond_chance",
    ];

    /// <summary>All ranges, combinations and pairs, one a row.</summary>
    public static IEnumerable<string[]> Rows(CombineResult result)
    {
        double average = result.Probability.Estimate;
        IEnumerable<string[]> ranges = result.Ranges.Select(r => Row(
            "range", [r], r.Probability, r.Probability.Estimate / average, r.Mass, "", null, ""));
        IEnumerable<string[]> combinations = result.Combinations.Select(c => Row(
            "combination", c.Members, c.Probability, c.Lift.Estimate, c.Likelihood, Cells.Of(c.Rows), c.Multiplied, c.ExceedsParts
                ? "yes" : "no"));
        IEnumerable<string[]> pairs = result.Pairs.Select(p => Row(
            "pair", [p.First, p.Second], p.Together, p.Together.Estimate / average, p.Likelihood, Cells.Of(p.Rows), p.Multiplied,
                p.IsNotable ? "yes" : "no"));
        return ranges.Concat(combinations).Concat(pairs);
    }

    private static string[] Row(
        string kind, IReadOnlyList<AdverseRange> members, Interval p, double lift, double likelihood, string rows, Interval? multiplied,
            string beyond) =>
    [
        kind, RangeWords.OfKeys(members), Cells.Of(p.Estimate), Cells.Of(p.Low), Cells.Of(p.High), Cells.Of(lift),
        Cells.Of(lift * likelihood),
        Cells.Of(likelihood), rows,
        .. multiplied is { } m ? new[] { Cells.Of(m.Estimate), Cells.Of(m.Low), Cells.Of(m.High) } : ["", "", ""],
        beyond,
    ];

    private static JsonObject Range(AdverseRange r) => new()
    {
        ["factor"] = r.Factor.Name,
        ["column"] = r.Column,
        ["unit"] = r.Factor.Unit,
        ["part"] = r.Part.ToString().ToLowerInvariant(),
        ["limit"] = r.Part == RangePart.State && RangeWords.State(r) is var state && !double.TryParse(state, out double _)
            ? JsonValue.Create(state)
            : Json.Number(r.Limit),
        ["likelihood"] = r.Mass,
    };

    /// <summary>One combination.</summary>
    public static JsonObject Worst(Combination c) => new()
    {
        ["members"] = Json.List(c.Members, Range),
        ["words"] = CombineText.Sentence(c),
        ["probability"] = Json.Of(c.Probability),
        ["lift"] = Json.Of(c.Lift),
        ["coverage"] = Json.Of(c.Coverage),
        ["likelihood"] = c.Likelihood,
        ["multiplied"] = Json.Of(c.Multiplied),
        ["exceeds_parts"] = c.ExceedsParts,
        ["rows"] = c.Rows,
        ["effective_failures"] = Json.Number(c.EffectiveFailures),
    };

    private static JsonObject Pair(PairEffect p) => new()
    {
        ["first"] = Range(p.First),
        ["second"] = Range(p.Second),
        ["probability"] = Json.Of(p.Together),
        ["multiplied"] = Json.Of(p.Multiplied),
        ["ratio"] = Json.Of(p.Ratio),
        ["likelihood"] = p.Likelihood,
        ["rows"] = p.Rows,
        ["notable"] = p.IsNotable,
        ["correlated"] = p.AreCorrelated,
    };

    /// <summary>What was searched.</summary>
    public static JsonObject Searched(SearchRecord s) => new()
    {
        ["rows"] = s.Rows,
        ["ranges"] = s.Ranges,
        ["possible"] = s.Possible,
        ["evaluated"] = s.Evaluated,
        ["ranked"] = s.Eligible,
        ["most_members"] = s.Limits.MostMembers,
        ["least_rows"] = s.Limits.LeastRows,
        ["least_coverage"] = s.Limits.LeastCoverage,
        ["least_effective_failures"] = s.Limits.LeastEffectiveFailures,
        ["error_rate"] = s.Limits.ErrorRate,
    };
}
