using System.Text.Json.Nodes;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>The comparison with simulation in time as JSON and as rows.</summary>
internal static class ConfirmDocument
{
    public static JsonObject AddTo(JsonObject document, ConfirmationResult result)
    {
        ConfirmationQuestion q = result.Question;
        document["lift_off_allowed"] = q.LiftOff;
        document["bump_clearance_mm"] = Json.Number(q.BumpClearanceMm);
        document["bump_stop_n_per_mm"] = Json.Number(double.IsFinite(q.BumpClearanceMm) ? q.BumpStopNPerMm : double.NaN);
        document["damper_bump"] = Json.Number(q.BumpDamping);
        document["damper_rebound"] = Json.Number(q.ReboundDamping);
        document["records"] = result.Records;
        document["km_per_record"] = Json.Number(q.KmPerRecord);
        document["simulated_seconds"] = Json.Number(result.SimulatedSeconds);
        document["points"] = Json.List(result.Points, p => new JsonObject
        {
            ["point"] = p.Name,
            ["life_km"] = Json.Number(p.LifeKm),
            ["fast_over_linear"] = Json.Of(p.Fast),
            ["limits_over_linear"] = Json.Of(p.Limits),
            ["true_over_computed"] = Json.Of(p.Ratio),
            ["legs"] = Json.List(p.Legs, l => new JsonObject
            {
                ["leg"] = l.Name,
                ["damage_share"] = Json.Number(l.DamageShare),
                ["fast_over_linear"] = Json.Of(l.FastOverLinear),
                ["limits_over_linear"] = Json.Of(l.LimitsOverLinear),
                ["fast_over_simulated"] = Json.Of(l.FastOverReference),
                ["off_ground_share"] = Json.Number(l.OffGroundShare),
                ["strikes_per_km"] = Json.Number(l.StrikesPerKm),
                ["tyre_force_rms_over_static"] = Json.Number(l.TyreForceRatio),
            }),
        });
        document["damage_ratio"] = new JsonObject
        {
            ["median"] = Json.Number(result.RatioMedian),
            ["cov"] = Json.Number(result.RatioCov),
            ["toml"] = ConfirmText.TomlLine(result),
        };
        return document;
    }

    public static string[] Header { get; } = ["point", "leg", "ratio", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(ConfirmationResult result)
    {
        foreach (ConfirmedPoint p in result.Points)
        {
            yield return Row(p.Name, "", "true_over_computed", p.Ratio);
            yield return Row(p.Name, "", "limits_over_linear", p.Limits);
            yield return Row(p.Name, "", "fast_over_linear", p.Fast);
            foreach (ConfirmedLeg l in p.Legs)
            {
                yield return Row(p.Name, l.Name, "fast_over_simulated", l.FastOverReference);
                yield return Row(p.Name, l.Name, "limits_over_linear", l.LimitsOverLinear);
                yield return Row(p.Name, l.Name, "fast_over_linear", l.FastOverLinear);
            }
        }
    }

    private static string[] Row(string point, string leg, string ratio, Interval x) =>
        [point, leg, ratio, Cells.Of(x.Estimate), Cells.Of(x.Low), Cells.Of(x.High)];
}
