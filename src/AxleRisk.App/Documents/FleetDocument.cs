using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Documents;

/// <summary>A fleet's warranty as JSON and as rows.</summary>
internal static class FleetDocument
{
    private static readonly JsonForm<Prediction> Count = new JsonForm<Prediction>("count")
        .Interval("expected", "the expected number; its interval is the error of sampling", p => p.Expected)
        .Whole("low", "lower end of what the fleet will have with 95 % probability", p => p.Low)
        .Whole("high", "upper end", p => p.High);

    private static readonly JsonForm<SearchAnswer> Answer = new JsonForm<SearchAnswer>("search_answer")
        .Word("outcome", "whether a limit was found, or none or every one meets the target", Outcomes, a => Name(a.Outcome))
        .With(CommonForms.Interval, a => a.Value)
        .NumberOrNull("searched_from", "the least value searched", a => a.Low)
        .NumberOrNull("searched_to", "the greatest value searched", a => a.High);

    public static JsonForm<FleetResult> Form { get; } = new JsonForm<FleetResult>()
        .Whole("vehicles", "number of vehicles", r => r.Fleet.Vehicles)
        .Whole("warranty_months", "age limit of the warranty, months", r => r.Fleet.WarrantyMonths)
        .Number("warranty_km", "distance limit of the warranty, km", r => r.Fleet.WarrantyKm)
        .Interval("claim_rate", "the expected share with a claim", r => r.ClaimRate)
        .Object("claims", "the number of claims", Count, r => r.Claims)
        .NumberOrNull("unknown_share_of_variance", "the part of the variance of the number that is not chance", r => r.UnknownShare)
        .NumberOrNull("ended_by_distance", "the share of the warranties that end by distance", r => r.EndedByDistance)
        .Object("cost", "what the claims will cost; null without a cost", new JsonForm<CostPrediction>()
            .Interval("expected", "the expected cost", c => c.Expected)
            .NumberOrNull("low", "lower end of what it will be with 95 % probability", c => c.Low)
            .NumberOrNull("high", "upper end", c => c.High)
            .Whole("simulated_fleets", "fleets simulated for that; 0 where every claim costs the same",
                c => c.SimulatedFleets), r => r.Cost).OrNull()
        .Text("currency", "the currency of the costs; only where the scenario states one", r => r.Currency).Optional()
        .List("months", "the claims by month since the first sale", new JsonForm<ClaimMonth>()
            .Whole("month", "the month, from 1", m => m.Month)
            .Object("in_month", "claims in it", Count, m => m.InMonth)
            .Object("so_far", "claims to its end", Count, m => m.SoFar), r => r.Months)
        .Object("target_claim_rate", "what the target claim rate leaves; null without one", new JsonForm<WarrantyLimits>()
            .Number("rate", "the target", w => w.Target)
            .Interval("met_with_probability", "probability, over what is not known, that the warranty as stated meets it",
                w => w.Confidence)
            .List("longest", "the longest warranties that meet it", new JsonForm<WarrantyLimit>()
                .Word("basis", "on average, or with 90 % probability", Bases, l => Name(l.Basis))
                .Object("months", "age limit, months", Answer, l => l.Months)
                .Object("km", "distance limit, km", Answer, l => l.Km), w => w.Limits), r => r.Warranty).OrNull()
        .Maybe("target_life", "what meets the target life; null without one, or where the run ended before",
            new JsonForm<(DesignLimits Design, RiskHeadline? Headline)>()
                .Number("fraction", "the share that may have failed", d => d.Design.Target.Fraction)
                .Number("km", "by this distance, km", d => d.Design.Target.Km)
                .Probability("failure_probability", "failure probability by then as it is, of `risk`",
                    d => d.Headline?.Probability ?? d.Design.AsItIs)
                .Object("own_sample", "what this analysis' own sample says of it", HeadlineDocument.Own, d => (d.Headline, d.Design.AsItIs))
                .NumberOrNull("nominal_wall_mm", "nominal wall now, mm; null where it decides nothing", d => d.Design.NominalWallMm)
                .List("limits", "the limiting designs, each with all else as stated", new JsonForm<DesignLimit>()
                    .Word("basis", "on average, or with 90 % probability", Bases, l => Name(l.Basis))
                    .Object("wall_mm", "the smallest nominal wall, mm; null where it decides nothing", Answer, l => l.WallMm).OrNull()
                    .Object("tolerance", "the loosest tolerance, as a multiple of the wall's spread; null where there is none",
                        Answer, l => l.Tolerance)
                    .OrNull()
                    .Object("category", "the worst weld category; null where the S-N curve is the scenario's own", new JsonForm<CategoryAnswer>()
                        .Word("outcome", "whether a limit was found, or none or every one meets the target", Outcomes, c => Name(c.Outcome))
                        .Text("worst", "the worst that meets the target; null where none does", c => c.Category).OrNull()
                        .Interval("failure_probability", "failure probability with it", c => c.Probability)
                        .Text("next", "the next worse one; null where there is none", c => c.Next).OrNull()
                        .Interval("next_failure_probability", "failure probability with that",
                            c => c.NextProbability), l => l.Category)
                    .OrNull(), d => d.Design.Limits),
            r => r.Design is { } design ? (design, r.Headline) : null)
        .Object("two_levels", "how the sample was divided", new JsonForm<FleetSampling>()
            .Whole("replicates", "independent replicates", s => s.Replicates)
            .Whole("outer", "draws of what the fleet shares, in all", s => s.Outer)
            .Whole("inner", "vehicles drawn for each of them", s => s.Inner)
            .Whole("design_outer", "draws behind each design looked at; 0 where none was", s => s.DesignOuter)
            .Whole("design_inner", "vehicles drawn for each of them", s => s.DesignInner)
            .Whole("designs", "designs looked at", s => s.Designs)
            .Texts("shared_factors", "the factors that the whole fleet shares", s => s.Shared.Select(f => f.Name))
            .Flag("conditional", "whether what is left to chance is averaged exactly rather than drawn", s => s.IsConditional)
            .NumberOrNull("inner_share_of_variance", "share of the spread as drawn that is only the error of the inner draws; it is taken out", s => s.InnerShare)
            .NumberOrNull("band_residue", "by what share the band of the claims may still be too wide or too narrow for it, 95 %",
                s => s.Residue), r => r.Sampling);

    private static IReadOnlyList<string> Outcomes => ["found", "none_meets", "every_meets"];

    private static IReadOnlyList<string> Bases => ["average", "ninety_percent"];

    public static string[] Header { get; } = ["figure", "of", "estimate", "low", "high", "predicted_low", "predicted_high"];

    public static IEnumerable<string[]> Rows(FleetResult result) =>
    [
        [.. Cells.Row("claim_rate", "", result.ClaimRate), "", ""],
        Row("claims", "", result.Claims),
        .. result.Cost is { } cost ? (string[][])[[.. Cells.Row("cost", "", cost.Expected), Cells.Of(cost.Low), Cells.Of(cost.High)]] : [],
        .. result.Months.Select(m => Row("claims_in_month", m.Month.ToString(), m.InMonth)),
        .. result.Months.Select(m => Row("claims_so_far", m.Month.ToString(), m.SoFar)),
        .. (result.Warranty?.Limits ?? [])
            .SelectMany(l => (string[][])[Row("longest_months", l.Basis, l.Months), Row("longest_km", l.Basis, l.Km)]),
        .. (result.Design?.Limits ?? []).SelectMany(l => (string[][])
        [
            .. l.WallMm is { } wall ? (string[][])[Row("smallest_wall_mm", l.Basis, wall)] : [],
            .. l.Tolerance is { } tolerance ? (string[][])[Row("loosest_tolerance", l.Basis, tolerance)] : [],
            .. l.Category is { } category
                ? (string[][])[["worst_category", Name(l.Basis), category.Category ?? "", "", "", "", ""]] : [],
        ]),
    ];

    private static string[] Row(string figure, string of, Prediction p) =>
        [.. Cells.Row(figure, of, p.Expected), p.Low.ToString(), p.High.ToString()];

    private static string[] Row(string figure, TargetBasis basis, SearchAnswer answer) =>
        [.. Cells.Row(figure, Name(basis), answer.Value), "", ""];

    private static string Name(TargetBasis basis) => basis == TargetBasis.Average ? "average" : "ninety_percent";

    private static string Name(SearchOutcome outcome) => outcome switch
    {
        SearchOutcome.NoneMeets => "none_meets",
        SearchOutcome.EveryMeets => "every_meets",
        _ => "found",
    };
}
