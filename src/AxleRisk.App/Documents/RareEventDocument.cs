using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.RareEvents;

namespace AxleRisk.App.Documents;

/// <summary>A rare-event answer as JSON.</summary>
internal static class RareEventDocument
{
    public static JsonObject Of(RareEventResult result) => new()
    {
        ["distance_km"] = result.DistanceKm,
        ["probability"] = Json.Of(result.Probability),
        ["failure_found"] = result.FailureFound,
        ["coefficient_of_variation"] = Json.Number(result.Cov),
        ["method"] = result.Method,
        ["method_reason"] = result.MethodReason,
        ["doubt"] = result.Doubt,
        ["search_evaluations"] = result.SearchEvaluations,
        ["sampling_evaluations"] = result.SamplingEvaluations,
        ["effective_sample_size"] = Json.Number(result.EffectiveSize),
        ["cross_check"] = result.CrossCheck is { } check ? CrossCheck(check, result.CrossCheckDistance) : null,
        ["states"] = Json.List(result.States, s => new JsonObject
        {
            ["state"] = s.Name,
            ["probability"] = Json.Number(s.Probability),
            ["failure_probability"] = Json.Number(s.FailureProbability),
            ["design_points"] = Json.List(s.DesignPoints, DesignPoint),
        }),
    };

    private static JsonObject CrossCheck(RareEventEstimate check, double distance) => new()
    {
        ["method"] = check.Method,
        ["probability"] = Json.Of(check.Probability),
        ["coefficient_of_variation"] = Json.Number(check.Cov),
        ["evaluations"] = check.Evaluations,
        ["standard_errors_apart"] = Json.Number(distance),
    };

    private static JsonObject DesignPoint(DesignPointReport point) => new()
    {
        ["beta"] = Json.Number(point.Beta),
        ["approximate"] = point.IsApproximate,
        ["coordinates"] = Json.List(point.Coordinates, c => new JsonObject
        {
            ["name"] = c.Name,
            ["value"] = Json.Number(c.Value),
            ["direction_cosine"] = Json.Number(c.Cosine),
        }),
    };
}
