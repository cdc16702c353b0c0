using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Inspections;

namespace AxleRisk.App.Documents;

/// <summary>What looking for the crack brings, as JSON and as rows.</summary>
internal static class InspectDocument
{
    private static readonly string[] Aims = ["fewest", "cheapest"];

    private static readonly JsonForm<InspectedDistance> Distance = new JsonForm<InspectedDistance>()
        .Number("distance_km", "the distance, km", d => d.Km)
        .Interval("failure_probability", "the failure probability by it", d => d.Failed);

    private static readonly JsonForm<PlannedLooks> Plan = new JsonForm<PlannedLooks>()
        .Text("method", "the way of looking", p => p.Method)
        .Word("aim", "the fewest looks that keep the target, or the least expected cost", Aims, p => Aims[(int)p.Aim])
        .Whole("looks", "the number of looks", p => p.Looks)
        .NumberOrNull("first_km", "the distance of the first, km; null where no look is needed or pays", p => p.FirstKm)
        .NumberOrNull("every_km", "the distance between two, km; null where no look is needed or pays", p => p.EveryKm)
        .Interval("failure_probability", "the failure probability by the required distance", p => p.Failed)
        .Interval("greatest_between", "the greatest failure probability of a whole vehicle from one look to the next, start and end included",
            p => p.Greatest)
        .Maybe("cost", "the mean cost of a vehicle; null where nothing has a cost", CommonForms.Interval, p => p.Cost)
        .Maybe("saves", "what it costs less than no look, by the same vehicles; null where a failure has no cost", CommonForms.Interval, p => p.Saves);

    public static JsonForm<InspectResult> Form { get; } = new JsonForm<InspectResult>()
        .Text("currency", "what costs are stated in", r => r.Currency).Optional()
        .Object("seen", "what was seen of the vehicle, given which all figures are; only of one that is known to be whole", SeenDocument.Form, r => r.Seen)
        .Optional()
        .Number("from_km", "the distance at which the way begins; 0 of new vehicles, km", r => r.FromKm)
        .Number("required_km", "the distance to which plans go, km", r => r.RequiredKm)
        .NumberOrNull("target", "the failure probability of a whole vehicle from one look to the next that is to be kept; null where none is stated",
            r => r.Terms.Target)
        .Interval("failure_without", "the failure probability by the required distance without a look", r => r.WithoutPlan[^1].Failed)
        .Interval("failure_with", "the same with the looks in `inspections`", r => r.WithPlan[^1].Failed)
        .List("without_plan", "the failure probability by distance without a look", Distance, r => r.WithoutPlan)
        .List("with_plan", "the same with the looks in `inspections`", Distance, r => r.WithPlan)
        .Flag("stated", "whether these looks are stated in the scenario, and not those of `plan`", r => r.IsStated)
        .List("inspections", "the looks, by distance", new JsonForm<InspectedLook>()
            .Number("distance_km", "the distance, km", l => l.Km)
            .Text("method", "the way of looking", l => l.Method)
            .Interval("found", "probability that a vehicle comes whole to the look and the crack is found", l => l.Found)
            .Interval("missed", "probability that it comes whole to the look with a crack of the method's a50 or deeper, which is not found",
                l => l.Missed)
            .Interval("false_calls", "probability that the look calls a crack where it has found none", l => l.FalseCalls)
            .Interval("failure_before_next",
                "probability that a vehicle which is whole at the look, and of which this and all looks before have found nothing, fails before the next or the required distance",
                l => l.FailureBeforeNext), r => r.Looks)
        .Interval("greatest_between", "the greatest failure probability of a whole vehicle from one look to the next, start and end included",
            r => r.Greatest)
        .Maybe("cost", "the mean cost of a vehicle with these looks; null where nothing has a cost", CommonForms.Interval, r => r.Cost)
        .Maybe("cost_without", "the mean cost of a vehicle without a look; null where a failure has none", CommonForms.Interval, r => r.CostWithout)
        .Object("plan", "the plan to begin with: the cheapest of those that keep the target, without costs that of the fewest looks; null where there is none",
            Plan, r => r.Plan).OrNull()
        .List("plans", "all plans made, method by method", Plan, r => r.Plans)
        .Flag("exact", "whether the scatter of life is integrated over, and not drawn", r => r.IsExact);

    public static string[] Header { get; } = ["figure", "of", "distance_km", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(InspectResult result) =>
    [
        .. result.WithoutPlan.Select(d => Row("without_plan", "", d.Km, d.Failed)),
        .. result.WithPlan.Select(d => Row("with_plan", "", d.Km, d.Failed)),
        .. result.Looks.SelectMany(l => new[]
        {
            Row("found", l.Method, l.Km, l.Found), Row("missed", l.Method, l.Km, l.Missed), Row("false_calls", l.Method, l.Km, l.FalseCalls),
            Row("failure_before_next", l.Method, l.Km, l.FailureBeforeNext),
        }),
    ];

    private static string[] Row(string figure, string of, double km, Core.Numerics.Interval i) =>
        [figure, of, Cells.Of(km), Cells.Of(i.Estimate), Cells.Of(i.Low), Cells.Of(i.High)];
}
