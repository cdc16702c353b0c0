using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Documents;

/// <summary>What was seen of a vehicle that is whole, as JSON.</summary>
internal static class SeenDocument
{
    /// <summary>Looks for the crack.</summary>
    public static JsonForm<CrackLook> Look { get; } = new JsonForm<CrackLook>()
        .Text("method", "the way of looking", l => l.Method.Name)
        .Number("at_km", "the distance, km", l => l.Km)
        .Word("found", "what was found", ["nothing", "crack"], l => l.IsFound ? "crack" : "nothing")
        .Number("depth_mm", "the depth measured, mm", l => l.DepthMm).Optional()
        .Number("sd_mm", "standard deviation of its error, mm", l => l.DepthMm is null ? null : l.StandardDeviationMm).Optional();

    /// <summary>The evidence.</summary>
    public static JsonForm<Evidence> Form { get; } = new JsonForm<Evidence>()
        .Number("survived_km", "the distance that it has reached, km", e => e.LifeWithLooks is LifeEvidence.Survived(var km) ? km : null).Optional()
        .List("looks", "the looks for the crack, by distance", Look, e => e.Looks)
        .Texts("measured", "the factors that were measured on it", e => e.Measured.Select(m => m.Factor))
        .Texts("known", "the choices whose state is known", e => e.Known.Select(k => k.Factor));
}
