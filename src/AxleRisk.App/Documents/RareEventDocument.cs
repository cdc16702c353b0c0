using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.RareEvents;

namespace AxleRisk.App.Documents;

/// <summary>A rare-event answer as JSON.</summary>
internal static class RareEventDocument
{
    public static JsonForm<RareEventResult> Form { get; } = new JsonForm<RareEventResult>("rare_event")
        .Number("distance_km", "the distance, km", r => r.DistanceKm)
        .Interval("probability", "failure probability by the distance", r => r.Probability)
        .Flag("failure_found", "whether any failure was found", r => r.FailureFound)
        .NumberOrNull("coefficient_of_variation", "coefficient of variation of the probability", r => r.Cov)
        .Text("method", "the method in words", r => r.Method)
        .Text("method_reason", "why it fits, or what the answer means", r => r.MethodReason)
        .Text("doubt", "why the answer cannot be relied on; null where it can", r => r.Doubt).OrNull()
        .Whole("search_evaluations", "evaluations spent on design points", r => r.SearchEvaluations)
        .Whole("sampling_evaluations", "evaluations spent on importance sampling", r => r.SamplingEvaluations)
        .NumberOrNull("effective_sample_size", "effective sample size of the weights", r => r.EffectiveSize)
        .Maybe("cross_check", "the same by another method; null where none was asked for",
            new JsonForm<(RareEventEstimate Check, double Distance)>()
                .Text("method", "the method in words", c => c.Check.Method)
                .Interval("probability", "failure probability by it", c => c.Check.Probability)
                .NumberOrNull("coefficient_of_variation", "coefficient of variation of that", c => c.Check.Cov)
                .Whole("evaluations", "evaluations spent on it", c => c.Check.Evaluations)
                .NumberOrNull("standard_errors_apart", "how far the two lie apart, in standard errors of both together", c => c.Distance),
            r => r.CrossCheck is { } check ? (check, r.CrossCheckDistance) : null)
        .List("states", "the states of what is a choice, the greatest part of the failures first", new JsonForm<RareEventState>()
            .Text("state", "the state; empty where nothing is a choice", s => s.Name)
            .NumberOrNull("probability", "its probability", s => s.Probability)
            .NumberOrNull("failure_probability", "failure probability in it", s => s.FailureProbability)
            .List("design_points", "the likeliest ways to fail, the nearest first", new JsonForm<DesignPointReport>()
                .NumberOrNull("beta", "distance from the medians in standard normals: first-order reliability index", p => p.Beta)
                .Flag("approximate", "whether the search did not converge there", p => p.IsApproximate)
                .List("coordinates", "the factors, the most important first", new JsonForm<DesignCoordinate>()
                    .Text("name", "the factor, or a leg's share of an uncertain road mix", c => c.Name)
                    .NumberOrNull("value", "its value there, in its unit", c => c.Value)
                    .NumberOrNull("direction_cosine", "direction cosine of its standard normal; the squares add up to 1", c => c.Cosine),
                    p => p.Coordinates), s => s.DesignPoints), r => r.States);
}
