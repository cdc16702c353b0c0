using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>The ranking as JSON and as rows.</summary>
internal static class RankDocument
{
    private static readonly JsonForm<Pinned> Held = new JsonForm<Pinned>("held")
        .NumberOrNull("value", "the value it is held at, in its unit; null for the road mix", p => p.Value)
        .With(CommonForms.Interval, p => p.Probability)
        .Interval("ratio", "how many times that with the factor free, paired", p => p.Ratio);

    private static readonly JsonForm<(Interval Share, SobolPair Pair)> Indices = new JsonForm<(Interval Share, SobolPair Pair)>()
        .Interval("share", "its share of all (Shapley effect), a fraction", i => i.Share)
        .Interval("first", "first-order Sobol' index", i => i.Pair.First)
        .Interval("total", "total Sobol' index", i => i.Pair.Total);

    public static JsonForm<RankResult> Form { get; } = new JsonForm<RankResult>()
        .Number("required_km", "the required distance, km", r => r.RequiredKm)
        .With(HeadlineDocument.Form, r => (r.Headline, r.Probability))
        .Whole("rows", "rows of the plan", r => r.Rows)
        .Word("event_method", "how the event's probability is found: exactly given the damage, or by counting", CommonForms.EventMethods,
            r => r.IsConditional ? "conditional" : "crude")
        .Word("share_method", "how the shares were found", ["all subsets", "random orders"],
            r => r.ShareMethod == ShareMethod.AllSubsets ? "all subsets" : "random orders")
        .Whole("share_pairs", "pairs of rows; of random orders also the number of orders", r => r.SharePairs)
        .NumberOrNull("share_half_width", "half the width of the widest 95 % interval of a factor's share, a fraction; null where a share is unknown",
            r => r.WidestHalf)
        .NumberOrNull("share_half_width_asked", "the half width that the run went for; null where it spent what `--evaluations` stated, or with `--subsets`",
            r => r.HalfWidthAsked == 0 ? null : r.HalfWidthAsked)
        .List("by_knowledge", "the shares of what differs between vehicles together, and of what is not known",
            new JsonForm<KnowledgeShare>()
            .Word("knowledge", "which of the two", CommonForms.KnowledgeWords, k => CommonForms.Word(k.Knowledge))
            .Whole("factors", "number of factors", k => k.Factors)
            .Interval("failure_share", "their share of failure", k => k.Failure)
            .Interval("life_share", "their share of the spread of life", k => k.Life), r => r.ByKnowledge)
        .List("damage_by_leg_of_failures", "which leg does the damage among the vehicles that fail", new JsonForm<LegOfFailures>()
            .Text("leg", "the leg", l => l.Name)
            .With(CommonForms.Interval, l => l.DamageShare), r => r.Legs)
        .List("modes", "the modes of failure; only where there are several", ModeDocument.OfRank, r => r.Modes.IsEmpty ? null : r.Modes).Optional()
        .List("factors", "the factors, the largest share of failure first", new JsonForm<RankedFactor>()
            .Text("name", "the factor", f => f.Factor.Name)
            .Text("unit", "its unit; empty for a pure number", f => f.Factor.Unit)
            .Word("knowledge", "whether it differs between vehicles or is not known", CommonForms.KnowledgeWords,
                f => CommonForms.Word(f.Factor.Knowledge))
            .Text("distribution", "its distribution", f => f.Factor.Description)
            .Texts("ranked_with", "factors it is correlated with: its indices, not its share, are those of all together",
                f => f.RankedWith.Select(o => o.Name))
            .Whole("place", "its place by share of failure", f => f.Place)
            .Flag("tied", "whether others have the same place", f => f.IsTied)
            .Object("life", "of ln life", Indices, f => (f.LifeShare, f.Life))
            .Object("failure", "of failure before the required distance", new JsonForm<RankedFactor>()
                .With(Indices, f => (f.FailureShare, f.Failure))
                .NumberOrNull("pinned_probability", "failure probability with the factor at its nominal",
                    f => f.AtNominal.Probability.Estimate)
                .Object("pinned", "failure probability with the factor at its nominal", Held, f => f.AtNominal)
                .Object("at_5_percent", "with the factor at its 5 % point; null where it has none", Held, f => f.AtLow).OrNull()
                .Object("at_95_percent", "with the factor at its 95 % point; null where it has none", Held, f => f.AtHigh).OrNull()
                .Whole("direction", "1 more of it, more failures; -1 fewer; 0 cannot be told", f => f.Direction), f => f), r => r.Factors);

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
}
