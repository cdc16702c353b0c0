using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>Combined effects as JSON and as rows.</summary>
internal static class CombineDocument
{
    private static readonly JsonForm<AdverseRange> Range = new JsonForm<AdverseRange>("range")
        .Text("factor", "the factor", r => r.Factor.Name)
        .Text("column", "the factor, or the leg whose share of the road mix it is", r => r.Column)
        .Text("unit", "its unit; empty for a pure number", r => r.Factor.Unit)
        .Word("part", "which part of it", ["below", "above", "state"], r => r.Part.ToString().ToLowerInvariant())
        .Key("limit", new JsonShape.TextOrNumber(), "the end of the fifth, or the state", r =>
            r.Part == RangePart.State && RangeWords.State(r) is var state && !double.TryParse(state, out double _)
                ? JsonValue.Create(state)
                : Json.Number(r.Limit))
        .Number("likelihood", "how likely a vehicle is to lie in it", r => r.Mass);

    /// <summary>One combination.</summary>
    public static JsonForm<Combination> Worst { get; } = new JsonForm<Combination>("combination")
        .List("members", "its ranges and states, one to four", Range, c => c.Members)
        .Text("words", "the printed sentence", CombineText.Sentence)
        .Interval("probability", "failure probability with all of them", c => c.Probability)
        .Interval("lift", "that over the average", c => c.Lift)
        .Interval("coverage", "the share of all failures that it covers", c => c.Coverage)
        .Number("likelihood", "how likely a vehicle is to be like this", c => c.Likelihood)
        .Interval("multiplied", "what the members would give if their effects multiplied; may exceed 1", c => c.Multiplied)
        .Flag("exceeds_parts", "whether it is worse than that beyond chance", c => c.ExceedsParts)
        .Whole("rows", "sampled vehicles inside", c => c.Rows)
        .NumberOrNull("effective_failures", "effective number of failures behind the probability", c => c.EffectiveFailures);

    /// <summary>What was searched.</summary>
    public static JsonForm<SearchRecord> Searched { get; } = new JsonForm<SearchRecord>("search")
        .Whole("rows", "sampled vehicles that were searched", s => s.Rows)
        .Whole("ranges", "number of ranges and states", s => s.Ranges)
        .Number("possible", "combinations that could be made of them: the number the claims are corrected for", s => s.Possible)
        .Whole("evaluated", "combinations that were evaluated", s => s.Evaluated)
        .Whole("ranked", "those with enough vehicles and failures", s => s.Eligible)
        .Whole("most_members", "the most ranges of a combination", s => s.Limits.MostMembers)
        .Whole("least_rows", "the fewest vehicles of a combination", s => s.Limits.LeastRows)
        .Number("least_coverage", "the least share of the failures of a combination", s => s.Limits.LeastCoverage)
        .Number("least_effective_failures", "the least effective number of failures of a combination", s => s.Limits.LeastEffectiveFailures)
        .Number("error_rate", "probability of any claim that chance alone makes", s => s.Limits.ErrorRate);

    public static JsonForm<CombineResult> Form { get; } = new JsonForm<CombineResult>()
        .Number("required_km", "the required distance, km", r => r.RequiredKm)
        .With(HeadlineDocument.Form, r => (r.Headline, r.Probability))
        .Word("event_method", "how the event's probability is found: exactly given the damage, or by counting", CommonForms.EventMethods,
            r => r.IsConditional ? "conditional" : "crude")
        .List("ranges", "the ranges and states that were combined", new JsonForm<AdverseRange>()
            .With(Range, r => r)
            .Interval("probability", "failure probability in it", r => r.Probability), r => r.Ranges)
        .List("combinations", "the worst combinations, the worst first", Worst, r => r.Combinations)
        .List("pairs", "pairs of ranges against multiplication", new JsonForm<PairEffect>()
            .Object("first", "the one range", Range, p => p.First)
            .Object("second", "the other", Range, p => p.Second)
            .Interval("probability", "failure probability in both", p => p.Together)
            .Interval("multiplied", "what they would give if their effects multiplied; may exceed 1", p => p.Multiplied)
            .Interval("ratio", "the first over the second", p => p.Ratio)
            .Number("likelihood", "how likely a vehicle is to lie in both", p => p.Likelihood)
            .Whole("rows", "sampled vehicles in both", p => p.Rows)
            .Flag("notable", "whether the two figures differ beyond chance", p => p.IsNotable)
            .Flag("correlated", "whether the two factors are correlated: then the product counts a part twice",
                p => p.AreCorrelated), r => r.Pairs)
        .List("interactions", "interaction indices of the strongest factors' pairs, the largest first", new JsonForm<InteractionPair>()
            .Text("first", "the one factor, or a group of correlated ones", p => p.First)
            .Text("second", "the other", p => p.Second)
            .Interval("second_order", "second-order Sobol' index of the event", p => p.SecondOrder)
            .Interval("shapley_interaction", "Shapley interaction index of the event", p => p.Shapley), r => r.Interactions)
        .Object("searched", "what was searched", Searched, r => r.Searched);

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
}
