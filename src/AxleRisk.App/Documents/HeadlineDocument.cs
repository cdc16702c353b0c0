using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>The failure probability as the risk study gives it, and what an analysis' own sample says of it, as JSON.</summary>
internal static class HeadlineDocument
{
    /// <summary>Adds both by the required distance.</summary>
    public static void AddTo(JsonObject document, RiskHeadline? headline, Interval own)
    {
        document["failure_probability_at_required"] = Json.Resolved(headline?.Probability ?? own);
        document["own_sample"] = Own(headline, own);
    }

    /// <summary>An own sample's estimate and its change from the headline.</summary>
    public static JsonObject Own(RiskHeadline? headline, Interval own) => new()
    {
        ["failure_probability"] = Json.Of(own),
        ["change"] = headline is null ? null : Json.Of(headline.Off(own)),
    };
}
