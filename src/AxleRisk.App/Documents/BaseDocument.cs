using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Files;

namespace AxleRisk.App.Documents;

/// <summary>The base case as JSON and as rows.</summary>
internal static class BaseDocument
{
    /// <summary>The whole document of the command.</summary>
    public static JsonObject Of(ScenarioDocument document, BaseCaseResult result) => WholeDocument.Write("base", document, Form, result);

    public static JsonForm<BaseCaseResult> Form { get; } = new JsonForm<BaseCaseResult>()
        .NumberOrNull("life_km", "life with every input at its nominal, km", r => r.LifeKm)
        .NumberOrNull("median_factors_life_km", "life with every factor at its median, km", r => r.MedianFactorsLifeKm)
        .NumberOrNull("damage_per_km", "damage per km of use", r => r.DamagePerKm)
        .Number("stress_mpa_per_kn", "stress per force of the wheel, MPa/kN", r => r.Axle!.StressPerKnMPa)
        .Number("body_bounce_hz", "natural frequency of the body on its springs, Hz", r => r.Axle!.BodyBounceHz)
        .Number("wheel_hop_hz", "natural frequency of the axle between spring and tyre, Hz", r => r.Axle!.WheelHopHz)
        .Text("sn_curve", "catalogue and category of the S-N curve", r => $"{r.Axle!.Curve.Catalogue} {r.Axle.Curve.Category}")
        .Text("sn_environment", "what the weld lives in", r => r.Axle!.Curve.Environment)
        .Text("sn_source", "where the curve is published", r => r.Axle!.Curve.Source)
        .List("sections", "the checked sections, `axle` the first; only where there are further ones", new JsonForm<BaseSection>()
            .Text("section", "the section", s => s.Name)
            .NumberOrNull("stress_mpa_per_kn", "stress per force of the wheel, MPa/kN", s => s.StressPerKnMPa)
            .Text("sn_curve", "catalogue and category of the S-N curve", s => $"{s.Curve.Catalogue} {s.Curve.Category}")
            .NumberOrNull("damage_per_km", "damage per km of use, when new", s => s.DamagePerKm),
            r => r.Axle!.Sections.IsEmpty ? null : r.Axle.Sections).Optional()
        .List("legs", "the legs of use", new JsonForm<BaseLeg>()
            .Text("leg", "the leg", l => l.Name)
            .Number("share", "its share of the distance", l => l.Share)
            .Number("speed_km_per_h", "speed on it, km/h", l => l.SpeedKmPerH)
            .NumberOrNull("stress_rms_mpa", "RMS of the stress about its mean, MPa", l => l.StressRmsMPa)
            .NumberOrNull("upcrossings_per_s", "upcrossings of the mean a second", l => l.UpcrossingsPerSecond)
            .NumberOrNull("damage_share", "its share of the damage", l => l.DamageShare), r => r.Axle!.Legs)
        .List("events", "events on the legs; only where some are stated", new JsonForm<BaseEvent>()
            .Text("leg", "the leg", e => e.Leg)
            .Text("event", "the event", e => e.Name)
            .NumberOrNull("per_km", "how often it comes in a km of the leg", e => e.PerKm)
            .NumberOrNull("leg_damage_share", "its share of the damage of its leg", e => e.ShareOfLeg)
            .NumberOrNull("damage_share", "its share of all damage", e => e.Share), r => r.Axle!.Events.IsEmpty ? null : r.Axle.Events)
        .Optional()
        .List("crack_depth", "depth of the crack by distance; only where a crack is stated", new JsonForm<(double Km, double Mm)>()
            .Number("distance_km", "the distance, km", d => d.Km)
            .NumberOrNull("depth_mm", "the depth with every input at its nominal, mm", d => d.Mm), r => r.Depths.IsEmpty ? null : r.Depths)
        .Optional()
        .List("one_at_a_time", "what each factor alone does to life, the strongest first", new JsonForm<OneAtATime>()
            .Text("name", "the factor", f => f.Factor.Name)
            .NumberOrNull("low", "its 5 % point, in its unit; null for the road mix", f => f.Low)
            .NumberOrNull("high", "its 95 % point", f => f.High)
            .NumberOrNull("relative_life_at_low", "life at the 5 % point over that of the base case", f => f.LifeAtLow)
            .NumberOrNull("relative_life_at_high", "life at the 95 % point over that of the base case", f => f.LifeAtHigh)
            .NumberOrNull("relative_life_at_plus_10_percent", "life with the nominal raised by 10 %, over that of the base case; null where that has no meaning",
                f => f.LifeAtPlusTenPercent), r => r.Factors)
        .Whole("evaluations", "evaluations of the damage model", r => r.Evaluations);

    public static string[] Header { get; } =
        ["factor", "low", "high", "relative_life_at_low", "relative_life_at_high", "relative_life_at_plus_10_percent"];

    public static IEnumerable<string[]> Rows(BaseCaseResult result) => result.Factors.Select(f => (string[])
    [
        f.Factor.Name, Cells.Of(f.Low), Cells.Of(f.High), Cells.Of(f.LifeAtLow), Cells.Of(f.LifeAtHigh), Cells.Of(f.LifeAtPlusTenPercent),
    ]);
}
