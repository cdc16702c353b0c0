using System.Text.Json.Nodes;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Documents;

/// <summary>The causes as JSON and as rows.</summary>
internal static class CausesDocument
{
    public static JsonObject AddTo(JsonObject document, CausesResult result)
    {
        document["evidence"] = EvidenceOf(result);
        document["failure_before"] = result.FailureBefore is var (from, to)
            ? new JsonObject { ["first_distance"] = Json.Resolved(from), ["last_distance"] = Json.Resolved(to) }
            : null;
        document["causes"] = Json.List(result.Causes, CauseOf);
        document["explanations"] = Json.List(result.Explanations, e => ExplanationOf(result, e));
        document["life_method"] = result.IsConditional ? "conditional" : "counted";
        document["rows"] = result.Rows;
        document["effective_sample_size"] = result.EffectiveSampleSize;
        document["greatest_weight_share"] = result.GreatestShare;
        document["pilots"] = result.Pilots;
        document["sampler_moved"] = result.IsMoved;
        return document;
    }

    public static string[] Header { get; } =
    [
        "kind", "name", "state", "prior", "posterior", "posterior_low", "posterior_high", "times", "times_low", "times_high",
        "prior_5_percent", "prior_median", "prior_95_percent", "posterior_5_percent", "posterior_median", "posterior_95_percent", "bits",
    ];

    public static IEnumerable<string[]> Rows(CausesResult result) =>
    [
        .. result.Causes.SelectMany(c => c.States.Select(s => (string[])
            [
                c.Prior is null ? "state" : "adverse_tenth", c.Name, s.Name, Cells.Of(s.Prior),
                Cells.Of(s.Posterior.Estimate), Cells.Of(s.Posterior.Low), Cells.Of(s.Posterior.High),
                Cells.Of(s.Times.Estimate), Cells.Of(s.Times.Low), Cells.Of(s.Times.High),
                .. Points(c.Prior), .. Points(c.Posterior), Cells.Of(c.Bits),
            ])),
        .. result.Explanations.Select(e => (string[])
            [
                e.Settled is null ? "explanation" : "explanation_settled", CausesText.NameOf(result, e), "", Cells.Of(e.Prior),
                Cells.Of(e.Posterior.Estimate), Cells.Of(e.Posterior.Low), Cells.Of(e.Posterior.High),
                Cells.Of(e.Posterior.Estimate / e.Prior), Cells.Of(e.Posterior.Low / e.Prior), Cells.Of(e.Posterior.High / e.Prior),
                .. Points(null), .. Points(null), "",
            ]),
    ];

    private static string[] Points(Percentiles? p) => p is { } x ? [Cells.Of(x.Low), Cells.Of(x.Median), Cells.Of(x.High)] : ["", "", ""];

    private static JsonObject EvidenceOf(CausesResult result)
    {
        var document = new JsonObject();
        switch (result.Evidence.Life)
        {
            case LifeEvidence.FailedAt(var km):
                document["failed_at_km"] = km;
                break;
            case LifeEvidence.FailedBetween(var from, var to):
                document["failed_between_km"] = new JsonArray(from, to);
                break;
            case LifeEvidence.Survived(var km):
                document["survived_km"] = km;
                break;
        }

        document["measured"] = Json.List(
            result.Evidence.Measured,
            m => Sourced(new JsonObject { ["factor"] = m.Factor, ["value"] = m.Value, ["sd"] = m.StandardDeviation }, m.Source));
        document["known"] = Json.List(result.Evidence.Known, k => Sourced(
            new JsonObject
            {
                ["factor"] = k.Factor,
                ["state"] = result.Causes.First(c => c.Name == k.Factor).Factor.Show(k.Value),
            },
            k.Source));
        return Sourced(document, result.Evidence.Source);
    }

    /// <summary>Adds where something comes from, if that is stated.</summary>
    private static JsonObject Sourced(JsonObject document, string source)
    {
        if (source.Length > 0)
        {
            document["source"] = source;
        }

        return document;
    }

    private static JsonObject CauseOf(Cause c) => new()
    {
        ["name"] = c.Name,
        ["unit"] = c.Factor.Unit,
        ["knowledge"] = c.Factor.Knowledge.ToString().ToLowerInvariant(),
        ["known"] = c.IsKnown,
        ["bits"] = Json.Number(c.Bits),
        ["prior"] = PercentilesOf(c.Prior),
        ["posterior"] = PercentilesOf(c.Posterior),
        ["adverse_end"] = c.IsHighAdverse is { } high ? (high ? "high" : "low") : null,
        ["adverse_tenth"] = c.Prior is null ? null : ShiftOf(c.States[0]),
        ["states"] = c.Prior is null ? Json.List(c.States, ShiftOf) : new JsonArray(),
    };

    private static JsonObject ShiftOf(StateShift s) => new()
    {
        ["state"] = s.Name,
        ["prior"] = Json.Number(s.Prior),
        ["posterior"] = Json.Of(s.Posterior),
        ["times"] = Json.Of(s.Times),
    };

    private static JsonObject? PercentilesOf(Percentiles? p) => p is { } x
        ? new JsonObject { ["5_percent"] = Json.Number(x.Low), ["median"] = Json.Number(x.Median), ["95_percent"] = Json.Number(x.High) }
        : null;

    private static JsonObject ExplanationOf(CausesResult result, ExplanationShift e) => new()
    {
        ["name"] = CausesText.NameOf(result, e),
        ["of"] = Json.List(e.Names, n => JsonValue.Create(n)),
        ["prior"] = Json.Number(e.Prior),
        ["posterior"] = Json.Of(e.Posterior),
        ["settled"] = e.Settled is { } holds ? (holds ? "holds" : "ruled_out") : null,
    };
}
