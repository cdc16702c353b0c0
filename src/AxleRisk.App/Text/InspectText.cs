using AxleRisk.Core.Analyses.Inspections;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>What looking for the crack brings, as text.</summary>
internal static class InspectText
{
    public const string CurveHeading = "Failure probability over distance, without and with the looks";
    public const string LooksHeading = "The looks";
    public const string PlansHeading = "Plans, method by method";
    public const string Reading =
        "found and missed are of all vehicles where the way begins; missed: the crack is at least as deep as the method's a50. "
        + "before the next: of a vehicle whole at the look of which no look so far has found a crack. first: km, the others at even distances to the end. between: the greatest failure "
        + "probability of a whole vehicle from one look to the next, start and end included. saves: cost less than that of no look, by the same vehicles, and half the width of its 95 % interval.";

    public const string Limits =
        "A detection curve belongs to a procedure and to the person who follows it, and a clean look proves little of cracks below its a90. "
        + "The crack is one, of constant geometry factor, and its beginning counts as growth: many cracks, or one at another place, are not found by this.";

    /// <summary>The method in words.</summary>
    public static string Method(InspectResult result) =>
        (result.IsExact ? "scatter of life and chances of detection integrated over for each vehicle"
            : "scatter of life drawn with each vehicle, chances of detection exact")
        + $"; plans sought on {Figures.Count(Math.Min(result.Run.Evaluations, InspectionPlanVehicles))} of them";

    /// <summary>What is answered.</summary>
    public static string Question(InspectResult result) => result.Looks.IsEmpty
        ? $"{Subject(result)} fails by {Figures.Exact(result.RequiredKm)} km, without a look"
        : $"{Subject(result)} fails by {Figures.Exact(result.RequiredKm)} km, with {Looks(result.Looks.Length)} ({(result.IsStated ? "as stated" : "as planned")})";

    /// <summary>The answer.</summary>
    public static string Answer(InspectResult result) => Figures.Probability(result.WithPlan[^1].Failed);

    /// <summary>What it means.</summary>
    public static IEnumerable<string> Sentences(InspectResult result)
    {
        if (result.Seen is { } seen)
        {
            yield return $"Given that {LookWords.Seen(seen)}";
        }

        yield return $"95 % interval {Figures.ProbabilityRange(result.WithPlan[^1].Failed)}; without a look {Figures.Probability(result.WithoutPlan[^1].Failed)} {Figures.Range(result.WithoutPlan[^1].Failed)}";
        if (result.Looks is [.., var last])
        {
            yield return $"A vehicle that is whole at {Figures.Km(last.Km)} km, and of which no look has found a crack, fails before {Figures.Exact(result.RequiredKm)} km with a probability of {Figures.Probability(last.FailureBeforeNext)} {Figures.Range(last.FailureBeforeNext)}";
        }

        if (Target(result) is { } target)
        {
            yield return target;
        }

        if (result.Plan is { } plan)
        {
            yield return $"Plan: {Of(plan, result)}";
        }
    }

    /// <summary>The failure probability by distance.</summary>
    public static TextTable Curve(InspectResult result)
    {
        var table = new TextTable("distance km", "no look", "95 % interval", "with looks", "95 % interval");
        foreach ((InspectedDistance without, InspectedDistance with) in result.WithoutPlan.Zip(result.WithPlan))
        {
            table.Add(
                Figures.Km(without.Km), Figures.Probability(without.Failed), Figures.ProbabilityRange(without.Failed),
                Figures.Probability(with.Failed), Figures.ProbabilityRange(with.Failed));
        }

        return table;
    }

    /// <summary>What each look does.</summary>
    public static TextTable LookTable(InspectResult result)
    {
        var table = new TextTable("at km", "<method", "found", "missed", "before the next", "95 % interval");
        foreach (InspectedLook look in result.Looks)
        {
            table.Add(
                Figures.Km(look.Km), Printable.Line(look.Method), Figures.Probability(look.Found), Figures.Probability(look.Missed),
                Figures.Probability(look.FailureBeforeNext), Figures.ProbabilityRange(look.FailureBeforeNext));
        }

        return table;
    }

    /// <summary>The plans side by side.</summary>
    public static TextTable PlanTable(InspectResult result)
    {
        string[] saves = result.CostWithout is null ? [] : ["saves"];
        var table = new TextTable(["plan", "<seeks", "looks", "first", "fails", "between", "cost", .. saves]);
        if (result.CostWithout is { } none)
        {
            table.Add(
                "no look", "", "0", "", Figures.Probability(result.WithoutPlan[^1].Failed), "", DecideText.Money(none.Estimate), "");
        }

        foreach (PlannedLooks plan in result.Plans)
        {
            table.Add(
            [
                Printable.Line(plan.Method), Aim(plan.Aim), Figures.Count(plan.Looks), Km(plan.FirstKm),
                Figures.Probability(plan.Failed), Figures.Probability(plan.Greatest),
                plan.Cost is { } cost ? DecideText.Money(cost.Estimate) : "",
                .. saves.Select(_ => plan.Looks == 0 ? "" : About(plan.Saves!.Value)),
            ]);
        }

        return table;
    }

    /// <summary>What each method finds, as stated.</summary>
    public static TextTable Methods(IEnumerable<InspectionMethod> methods, string? currency)
    {
        var table = new TextTable("inspection", "a50 mm", "a90 mm", "false calls", "cost", "<at km");
        foreach (InspectionMethod m in methods)
        {
            table.Add(
                Printable.Line(m.Name), Figures.Exact(m.Detection.A50Mm), Figures.Exact(m.Detection.A90Mm), Figures.Share(m.FalseCalls),
                Figures.Cost(m.Cost, currency), m.AtKm.IsEmpty ? "to be planned" : string.Join(" | ", m.AtKm.Select(Figures.Exact)));
        }

        return table;
    }

    private const long InspectionPlanVehicles = (long)InspectAnalysis.Groups * InspectAnalysis.PlanVehiclesOfGroup;

    private static string Subject(InspectResult result) => result.Seen is null ? "A vehicle" : "This vehicle";

    private static string Aim(PlanAim aim) => aim == PlanAim.Fewest ? "fewest" : "cheapest";

    private static string? Target(InspectResult result) => result.Terms.Target is not { } target ? null
        : result.Looks.IsEmpty && !result.IsStated && result.Plan is null
            ? $"No plan of up to {InspectAnalysis.MostPlannedLooks} looks keeps the target of {Figures.Probability(target)} between looks"
        : $"The greatest failure probability from one look to the next is {Figures.Probability(result.Greatest)} {Figures.Range(result.Greatest)}: "
            + (result.Greatest.Estimate <= target ? "the target of " : "above the target of ") + Figures.Probability(target)
            + (result.Greatest.Estimate <= target ? " is kept" : "");

    private static string Of(PlannedLooks plan, InspectResult result)
    {
        string cost = plan.Cost is { } c ? $", at a mean cost of {Figures.Cost(DecideText.Money(c.Estimate), result.Currency)} a vehicle ({DecideText.Range(c)})" : "";
        return plan.Looks == 0
            ? $"no look {(plan.Aim == PlanAim.Fewest ? "is needed" : "pays")}{cost}"
            : $"{Printable.Line(plan.Method)}, first at {Figures.Km(plan.FirstKm!.Value)} km, then every {Figures.Km(plan.EveryKm!.Value)} km: {Looks(plan.Looks)}{cost}";
    }

    private static string Looks(int looks) => looks == 1 ? "one look" : $"{looks} looks";

    private static string Km(double? km) => km is { } x ? Figures.Km(x) : "";

    private static string About(Core.Numerics.Interval of)
    {
        double half = (of.High - of.Low) / 2;
        return half < 1 ? $"{DecideText.Money(of.Estimate)} +- {DecideText.Money(half)}"
            : $"{DecideText.Money(Math.Round(of.Estimate))} +- {DecideText.Money(Math.Round(half))}";
    }
}
