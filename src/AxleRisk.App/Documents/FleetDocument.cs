using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Documents;

/// <summary>A fleet's warranty as JSON and as rows.</summary>
internal static class FleetDocument
{
    public static JsonObject AddTo(JsonObject document, FleetResult result)
    {
        document["vehicles"] = result.Fleet.Vehicles;
        document["warranty_months"] = result.Fleet.WarrantyMonths;
        document["warranty_km"] = result.Fleet.WarrantyKm;
        document["claim_rate"] = Json.Of(result.ClaimRate);
        document["claims"] = Of(result.Claims);
        document["unknown_share_of_variance"] = Json.Number(result.UnknownShare);
        document["ended_by_distance"] = Json.Number(result.EndedByDistance);
        document["cost"] = result.Cost is { } cost
            ? new JsonObject
            {
                ["expected"] = Json.Of(cost.Expected),
                ["low"] = Json.Number(cost.Low),
                ["high"] = Json.Number(cost.High),
                ["simulated_fleets"] = cost.SimulatedFleets,
            }
            : null;
        if (result.Currency is { } currency)
        {
            document["currency"] = currency;
        }

        document["months"] = Json.List(result.Months, m => new JsonObject
        { ["month"] = m.Month, ["in_month"] = Of(m.InMonth), ["so_far"] = Of(m.SoFar) });
        document["target_claim_rate"] = result.Warranty is { } warranty ? Of(warranty) : null;
        document["target_life"] = result.Design is { } design ? Of(design, result.Headline) : null;
        document["two_levels"] = Of(result.Sampling);
        return document;
    }

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
            ["worst_category", Name(l.Basis), l.Category.Category ?? "", "", "", "", ""],
        ]),
    ];

    private static string[] Row(string figure, string of, Prediction p) =>
        [.. Cells.Row(figure, of, p.Expected), p.Low.ToString(), p.High.ToString()];

    private static string[] Row(string figure, TargetBasis basis, SearchAnswer answer) =>
        [.. Cells.Row(figure, Name(basis), answer.Value), "", ""];

    private static JsonObject Of(Prediction p) => new() { ["expected"] = Json.Of(p.Expected), ["low"] = p.Low, ["high"] = p.High };

    private static JsonObject Of(WarrantyLimits warranty) => new()
    {
        ["rate"] = warranty.Target,
        ["met_with_probability"] = Json.Of(warranty.Confidence),
        ["longest"] = Json.List(warranty.Limits, l => new JsonObject
        { ["basis"] = Name(l.Basis), ["months"] = Of(l.Months), ["km"] = Of(l.Km) }),
    };

    private static JsonObject Of(DesignLimits design, RiskHeadline? headline) => new()
    {
        ["fraction"] = design.Target.Fraction,
        ["km"] = design.Target.Km,
        ["failure_probability"] = Json.Resolved(headline?.Probability ?? design.AsItIs),
        ["own_sample"] = HeadlineDocument.Own(headline, design.AsItIs),
        ["nominal_wall_mm"] = design.NominalWallMm is double wall ? Json.Number(wall) : null,
        ["limits"] = Json.List(design.Limits, l => new JsonObject
        {
            ["basis"] = Name(l.Basis),
            ["wall_mm"] = l.WallMm is null ? null : Of(l.WallMm),
            ["tolerance"] = l.Tolerance is null ? null : Of(l.Tolerance),
            ["category"] = new JsonObject
            {
                ["outcome"] = Name(l.Category.Outcome),
                ["worst"] = l.Category.Category,
                ["failure_probability"] = Json.Of(l.Category.Probability),
                ["next"] = l.Category.Next,
                ["next_failure_probability"] = Json.Of(l.Category.NextProbability),
            },
        }),
    };

    private static JsonObject Of(SearchAnswer answer)
    {
        JsonObject value = Json.Of(answer.Value);
        value.Insert(0, "outcome", Name(answer.Outcome));
        value["searched_from"] = Json.Number(answer.Low);
        value["searched_to"] = Json.Number(answer.High);
        return value;
    }

    private static JsonObject Of(FleetSampling s) => new()
    {
        ["replicates"] = s.Replicates,
        ["outer"] = s.Outer,
        ["inner"] = s.Inner,
        ["design_outer"] = s.DesignOuter,
        ["design_inner"] = s.DesignInner,
        ["designs"] = s.Designs,
        ["shared_factors"] = Json.List(s.Shared, f => JsonValue.Create(f.Name)),
        ["conditional"] = s.IsConditional,
        ["inner_share_of_variance"] = Json.Number(s.InnerShare),
        ["band_residue"] = Json.Number(s.Residue),
    };

    private static string Name(TargetBasis basis) => basis == TargetBasis.Average ? "average" : "ninety_percent";

    private static string Name(SearchOutcome outcome) => outcome switch
    {
        SearchOutcome.NoneMeets => "none_meets",
        SearchOutcome.EveryMeets => "every_meets",
        _ => "found",
    };
}
