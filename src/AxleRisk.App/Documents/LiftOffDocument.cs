using System.Collections.Immutable;
using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.BaseCase;

namespace AxleRisk.App.Documents;

/// <summary>How near the legs come to lift-off, as JSON.</summary>
internal static class LiftOffDocument
{
    public static JsonObject AddTo(JsonObject document, ImmutableArray<LiftOffLeg> legs)
    {
        document["lift_off"] = Json.List(legs, l => new JsonObject
        {
            ["leg"] = l.Name,
            ["tyre_force_rms_over_static"] = Json.Number(l.TyreForceRatio),
            ["per_km"] = Json.Number(l.PerKm),
            ["likely"] = l.IsLikely,
        });
        return document;
    }
}
