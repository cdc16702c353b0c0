using System.Collections.Immutable;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>The comparison with simulation in time as JSON and as rows.</summary>
internal static class ConfirmDocument
{
    private static readonly JsonForm<(ImmutableArray<RideStepKind> Kinds, ImmutableArray<Interval> Over)> StepsForm =
        new JsonForm<(ImmutableArray<RideStepKind> Kinds, ImmutableArray<Interval> Over)>("steps")
            .Maybe(NameOf(RideStepKind.TwoRateDamper), "a damper of two rates",
                CommonForms.Interval, s => Of(s, RideStepKind.TwoRateDamper))
            .Optional()
            .Maybe(NameOf(RideStepKind.BumpStop), "a bump stop", CommonForms.Interval, s => Of(s, RideStepKind.BumpStop)).Optional()
            .Maybe(NameOf(RideStepKind.LiftOff), "wheels that leave the ground", CommonForms.Interval, s => Of(s, RideStepKind.LiftOff))
            .Optional();

    public static JsonForm<ConfirmationResult> Form { get; } = new JsonForm<ConfirmationResult>()
        .Number("stretch", "the stretch of the vehicle's history that is simulated, from 1; only where there is a history",
            r => r.Question.Stretch)
        .Optional()
        .Flag("lift_off_allowed", "whether wheels may leave the ground in the simulation", r => r.Question.LiftOff)
        .NumberOrNull("bump_clearance_mm", "compression from the static position to a bump stop, mm; null for none",
            r => r.Question.BumpClearanceMm)
        .NumberOrNull("bump_stop_n_per_mm", "rate of the bump stop, N/mm; null for none",
            r => double.IsFinite(r.Question.BumpClearanceMm) ? r.Question.BumpStopNPerMm : null)
        .Number("damper_bump", "damper rate in compression over the stated one", r => r.Question.BumpDamping)
        .Number("damper_rebound", "damper rate in extension over the stated one", r => r.Question.ReboundDamping)
        .Whole("records", "independent records of each leg", r => r.Records)
        .Number("km_per_record", "length of each, km", r => r.Question.KmPerRecord)
        .Number("simulated_seconds", "simulated time of all together, s", r => r.SimulatedSeconds)
        .Texts("steps", "what the simulation adds to the linear ride, one after the other", r => r.Steps.Select(NameOf))
        .List("points", "the base case, then the sampled points", PointForm(), r => r.Points.Select(p => (p, r.Steps)))
        .Object("damage_ratio", "true over computed damage, over the points", new JsonForm<ConfirmationResult>()
            .NumberOrNull("median", "its median", r => r.RatioMedian)
            .NumberOrNull("cov", "its coefficient of variation between points", r => r.RatioCov)
            .Text("toml", "the line for the scenario that carries it into other commands", ConfirmText.TomlLine)
            .List("legs", "the same by leg of use, in place of that of the whole", new JsonForm<LegRatio>()
                .Text("leg", "the leg", l => l.Leg)
                .NumberOrNull("median", "its median", l => l.Median)
                .NumberOrNull("cov", "its coefficient of variation between points", l => l.Cov)
                .Text("toml", "the line for the leg's table in the scenario", ConfirmText.TomlLine), r => r.Legs), r => r);

    private static JsonForm<(ConfirmedPoint Point, ImmutableArray<RideStepKind> Steps)> PointForm()
    {
        var form = new JsonForm<(ConfirmedPoint Point, ImmutableArray<RideStepKind> Steps)>("point");
        return form
            .Text("point", "what it is: the base case, a point near failure, or a place in the order of lives", p => p.Point.Name)
            .NumberOrNull("life_km", "life by the fast model, km", p => p.Point.LifeKm)
            .Interval("fast_over_linear", "damage by the fast model of the linear ride over that of its simulation", p => p.Point.Fast)
            .NumberOrNull("fast_strikes", "damage by the fast model over that of the linear ride alone: above 1 where it reckons with a bump stop",
                p => p.Point.FastStrikes)
            .Object("steps", "damage after each step over that before it", StepsForm, p => (p.Steps, p.Point.Steps))
            .Interval("limits_over_linear", "damage with lift-off and stops over that of the linear simulation", p => p.Point.Limits)
            .Interval("true_over_computed", "the simulation with its limits over the fast model", p => p.Point.Ratio)
            .List("legs", "by leg", new JsonForm<(ConfirmedLeg Leg, ImmutableArray<RideStepKind> Steps)>()
                .Text("leg", "the leg", l => l.Leg.Name)
                .NumberOrNull("damage_share", "its share of the damage by the fast model", l => l.Leg.DamageShare)
                .Interval("fast_over_linear", "damage by the fast model of the linear ride over that of its simulation",
                    l => l.Leg.FastOverLinear)
                .Object("steps", "damage after each step over that before it", StepsForm, l => (l.Steps, l.Leg.Steps))
                .Interval("limits_over_linear", "damage with lift-off and stops over that of the linear simulation",
                    l => l.Leg.LimitsOverLinear)
                .Interval("fast_over_simulated", "damage by the fast model over that with lift-off and stops", l => l.Leg.FastOverReference)
                .NumberOrNull("off_ground_share", "share of the time in which the wheel is off the ground", l => l.Leg.OffGroundShare)
                .NumberOrNull("strikes_per_km", "strikes of the bump stop a km", l => l.Leg.StrikesPerKm)
                .Number("tyre_force_rms_over_static", "RMS of the tyre's force about its static value over that, in the linear simulation",
                    l => l.Leg.TyreForceRatio), p => p.Point.Legs.Select(l => (l, p.Steps)))
            .Maybe("trip", "the same for the legs of the trip; only where there is one", form,
                p => p.Point.Trip is { } trip ? (trip, p.Steps) : null).Optional();
    }

    private static Interval? Of((ImmutableArray<RideStepKind> Kinds, ImmutableArray<Interval> Over) steps, RideStepKind kind) =>
        steps.Kinds.IndexOf(kind) is >= 0 and int place ? steps.Over[place] : null;

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
