using System.Collections.Immutable;
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
        document["steps"] = Json.List(result.Steps, s => NameOf(s));
        document["points"] = Json.List(result.Points, p => PointOf(p, result));
        document["damage_ratio"] = new JsonObject
        {
            ["median"] = Json.Number(result.RatioMedian),
            ["cov"] = Json.Number(result.RatioCov),
            ["toml"] = ConfirmText.TomlLine(result),
        };
        return document;
    }

    private static JsonObject PointOf(ConfirmedPoint p, ConfirmationResult result)
    {
        var point = new JsonObject
        {
            ["point"] = p.Name,
            ["life_km"] = Json.Number(p.LifeKm),
            ["fast_over_linear"] = Json.Of(p.Fast),
            ["fast_strikes"] = Json.Number(p.FastStrikes),
            ["steps"] = StepsOf(p.Steps, result),
            ["limits_over_linear"] = Json.Of(p.Limits),
            ["true_over_computed"] = Json.Of(p.Ratio),
            ["legs"] = Json.List(p.Legs, l => new JsonObject
            {
                ["leg"] = l.Name,
                ["damage_share"] = Json.Number(l.DamageShare),
                ["fast_over_linear"] = Json.Of(l.FastOverLinear),
                ["steps"] = StepsOf(l.Steps, result),
                ["limits_over_linear"] = Json.Of(l.LimitsOverLinear),
                ["fast_over_simulated"] = Json.Of(l.FastOverReference),
                ["off_ground_share"] = Json.Number(l.OffGroundShare),
                ["strikes_per_km"] = Json.Number(l.StrikesPerKm),
                ["tyre_force_rms_over_static"] = Json.Number(l.TyreForceRatio),
            }),
        };
        if (p.Trip is { } trip)
        {
            point["trip"] = PointOf(trip, result);
        }

        return point;
    }

    private static JsonObject StepsOf(ImmutableArray<Interval> steps, ConfirmationResult result) =>
        new(result.Steps.Zip(steps, (step, over) => KeyValuePair.Create(NameOf(step), (JsonNode?)Json.Of(over))));

    private static string NameOf(RideStepKind step) => step switch
    {
        RideStepKind.TwoRateDamper => "two_rate_damper",
        RideStepKind.BumpStop => "bump_stop",
        _ => "lift_off",
    };

    public static string[] Header { get; } = ["point", "leg", "ratio", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(ConfirmationResult result)
    {
        foreach (ConfirmedPoint p in result.Points)
        {
            foreach (string[] row in RowsOf(p, p.Name, result).Concat(p.Trip is { } trip ? RowsOf(trip, $"{p.Name}, trip", result) : []))
            {
                yield return row;
            }
        }
    }

    private static IEnumerable<string[]> RowsOf(ConfirmedPoint p, string name, ConfirmationResult result) =>
    [
        Row(name, "", "true_over_computed", p.Ratio), Row(name, "", "limits_over_linear", p.Limits),
        Row(name, "", "fast_over_linear", p.Fast),
        .. result.Steps.Zip(p.Steps, (step, over) => Row(name, "", NameOf(step), over)),
        .. p.Legs.SelectMany(l => new[]
        {
            Row(name, l.Name, "fast_over_simulated", l.FastOverReference), Row(name, l.Name, "limits_over_linear", l.LimitsOverLinear),
            Row(name, l.Name, "fast_over_linear", l.FastOverLinear),
        }),
    ];

    private static string[] Row(string point, string leg, string ratio, Interval x) =>
        [point, leg, ratio, Cells.Of(x.Estimate), Cells.Of(x.Low), Cells.Of(x.High)];
}
