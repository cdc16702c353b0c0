using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>The failure probability as the risk study gives it, and what an analysis' own sample says of it, as JSON.</summary>
internal static class HeadlineDocument
{
    /// <summary>An own sample's estimate and its change from the headline.</summary>
    public static JsonForm<(RiskHeadline? Headline, Interval Own)> Own { get; } = new JsonForm<(RiskHeadline? Headline, Interval Own)>("own_sample")
        .Interval("failure_probability", "failure probability by this analysis' own sample", h => h.Own)
        .Maybe("change", "that less the one of `risk`; null where this stands by itself",
            CommonForms.Interval, h => h.Headline?.Off(h.Own));

    /// <summary>Both by the required distance.</summary>
    public static JsonForm<(RiskHeadline? Headline, Interval Own)> Form { get; } = new JsonForm<(RiskHeadline? Headline, Interval Own)>()
        .Probability("failure_probability_at_required", "failure probability by the required distance, as of `risk`",
            h => h.Headline?.Probability ?? h.Own)
        .Object("own_sample", "what this analysis' own sample says of it", Own, h => h);
}
