using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Inspections;

/// <summary>What looking for the crack brings: with the looks stated, and with plans that are made.</summary>
public static class InspectAnalysis
{
    /// <summary>The vehicles drawn unless asked otherwise.</summary>
    public const long DefaultEvaluations = 8192;

    /// <summary>The fewest.</summary>
    public const long LeastEvaluations = 512;

    /// <summary>The most, as all are kept in memory.</summary>
    public const long MostEvaluations = 131_072;

    /// <summary>The most looks of all methods together that can be stated.</summary>
    public const int MostLooks = 64;

    /// <summary>Independent groups of vehicles, whose sums have the intervals.</summary>
    public const int Groups = InspectionRows.Groups;

    /// <summary>The vehicles of a group that plans are sought on; their figures are then told of all.</summary>
    public const int PlanVehiclesOfGroup = InspectionPlanner.VehiclesOfGroup;

    /// <summary>The most looks of a plan made.</summary>
    public const int MostPlannedLooks = InspectionPlanner.MostLooks;

    private const int MostTries = 4;

    // The parts of the way that the failure probability is told at.
    private const int Tellings = 8;

    /// <summary>The sampling plan unless asked otherwise.</summary>
    public static string DefaultSampling(LifeModel model) => RiskAnalysis.DefaultSampling(model.Factors.ColumnNames.Length);

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready; it states a crack and at least one way of looking for it.</param>
    /// <param name="settings">Vehicles, seed, sampling plan.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="unlooked">The failure probability without a look by distances, of the risk study: asked where nothing was seen of the
    /// vehicle, and then all failures are told as their ratio to it; null for that of the vehicles drawn.</param>
    /// <exception cref="StudyException">The plan has too few dimensions.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static InspectResult Run(
        LifeModel model, StudySettings settings, RunOptions options,
        Func<ImmutableArray<double>, ImmutableArray<RiskHeadline>>? unlooked = null)
    {
        Scenario scenario = model.Scenario;
        int dimensions = SamplingPlan.FromName(settings.Sampling, 1).Dimensions;
        if (model.Factors.ColumnNames.Length > dimensions)
        {
            throw new StudyException(
                $"{settings.Sampling} sampling has {dimensions} dimensions and this scenario needs {model.Factors.ColumnNames.Length}: choose --sampling {SamplingPlan.Names[0]}");
        }

        InspectionTerms terms = TermsOf(scenario);
        double end = scenario.RequiredKm;
        InspectionRows rows = InspectionRows.Draw(model, settings, options);
        unlooked = scenario.Evidence.IsOfWhole ? null : unlooked;
        rows.Unlooked = unlooked?.Invoke([end])[0];
        InspectionSums none = rows.Sums(InspectionSchedule.Of([], [], end), 1, options);
        ImmutableArray<PlannedLooks> plans = [.. scenario.Inspections.SelectMany(m => PlansOf(m, rows, none, end, terms, options))];
        PlannedLooks? plan = First(plans, terms);
        InspectionPoint[] stated =
            [.. scenario.Inspections.SelectMany(m => m.AtKm.Where(km => km > rows.FromKm).Select(km => new InspectionPoint(km, m)))];
        InspectionPoint[] looks = stated.Length > 0 || plan is null ? stated : PointsOf(plan, scenario, end);
        InspectionSums sums = rows.Sums(InspectionSchedule.Of(looks, TellAt(rows.FromKm, end), end), terms.RepairedLife, options);
        (InspectionPoint Point, int Place)[] points = [.. sums.Schedule.Points.Select((p, i) => (p, i))];
        ImmutableArray<RiskHeadline>? known = unlooked?.Invoke([.. points.Select(p => p.Point.Km)]);
        CrackModel crack = new(model);
        return new InspectResult
        {
            Methods = scenario.Inspections,
            Terms = terms,
            Currency = scenario.Currency,
            Seen = scenario.Evidence.IsOfWhole ? scenario.Evidence : null,
            FromKm = rows.FromKm,
            RequiredKm = end,
            Depth = (crack.Nominal.InitialMm, crack.Nominal.WallMm),
            WithoutPlan = [.. points.Select(p => new InspectedDistance(p.Point.Km, sums.Without(p.Place, known?[p.Place])))],
            WithPlan = [.. points.Select(p => new InspectedDistance(p.Point.Km, sums.With(p.Place, known?[p.Place])))],
            Looks =
            [
                .. points.Where(p => p.Point.Method is not null).Select(p => new InspectedLook(
                    p.Point.Km, p.Point.Method!.Name, sums.Found(p.Place), sums.Missed(p.Place), sums.FalseCalls(p.Place),
                    sums.FailsBeforeNext(p.Place))),
            ],
            IsStated = stated.Length > 0,
            Greatest = sums.Greatest(),
            Cost = HasCost(terms, looks.Select(l => l.Method!)) ? sums.Cost(terms) : null,
            CostWithout = terms.FailureCost is null ? null : none.Cost(terms),
            Plans = plans,
            Plan = plan,
            IsExact = model.Chances.IsExact,
            Run = new RunRecord(rows.Count, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, false),
        };
    }

    /// <summary>What plans are judged by, with the failure cost of the decision where no other is stated.</summary>
    public static InspectionTerms TermsOf(Scenario scenario) => scenario.InspectionTerms is { FailureCost: null } terms
        && scenario.Decision?.CostOfFailure(scenario) is { } cost ? terms with { FailureCost = DecideAnalysis.MeanOf(cost) }
        : scenario.InspectionTerms;

    private static IEnumerable<PlannedLooks> PlansOf(
        InspectionMethod method, InspectionRows rows, InspectionSums none, double end, InspectionTerms terms, RunOptions options)
    {
        var planner = new InspectionPlanner(rows, end, terms, options);
        if (terms.Target is { } target)
        {
            // By all vehicles it may not keep what it keeps by those of the search: then less is sought.
            double sought = target;
            PlannedLooks? plan = null;
            for (int i = 0; i < MostTries && !(plan?.Greatest.Estimate <= target); i++)
            {
                plan = planner.Fewest(method, sought) is var (at, number)
                    ? Told(method, PlanAim.Fewest, at, number, rows, none, end, terms, options) : null;
                sought *= plan is null ? 1 : 0.999 * target / plan.Greatest.Estimate;
            }

            if (plan is not null)
            {
                yield return plan;
            }
        }

        if (terms.FailureCost is not null)
        {
            (double first, int looks) = planner.Cheapest(method);
            yield return Told(method, PlanAim.Cheapest, first, looks, rows, none, end, terms, options);
        }
    }

    private static PlannedLooks Told(
        InspectionMethod method, PlanAim aim, double firstKm, int looks, InspectionRows rows, InspectionSums none, double end,
        InspectionTerms terms, RunOptions options)
    {
        InspectionSchedule schedule = looks == 0 ? InspectionSchedule.Of([], [], end)
            : InspectionSchedule.Regular(method, firstKm, looks, end);
        InspectionSums sums = rows.Sums(schedule, terms.RepairedLife, options);
        return new PlannedLooks(
            method.Name, aim, looks, looks == 0 ? null : firstKm,
            looks == 0 ? null : InspectionSchedule.EveryKm(firstKm, looks, end),
            sums.With(schedule.Points.Length - 1, rows.Unlooked), sums.Greatest(), HasCost(terms, [method]) ? sums.Cost(terms) : null,
            terms.FailureCost is null ? null : sums.SavesOver(none, terms));
    }

    // A target that is stated must be kept; of those that do the least cost decides, else the fewest looks.
    private static PlannedLooks? First(ImmutableArray<PlannedLooks> plans, InspectionTerms terms)
    {
        PlannedLooks[] kept = [.. plans.Where(p => terms.Target is null || p.Aim == PlanAim.Fewest || p.Greatest.Estimate <= terms.Target)];
        return terms.FailureCost is not null ? kept.MinBy(p => p.Cost!.Value.Estimate) : kept.MinBy(p => p.Looks);
    }

    private static InspectionPoint[] PointsOf(PlannedLooks plan, Scenario scenario, double end) => plan.Looks == 0 ? []
        : [.. InspectionSchedule.Regular(scenario.Inspections.First(m => m.Name == plan.Method), plan.FirstKm!.Value, plan.Looks, end)
            .Points.Where(p => p.Method is not null)];

    private static bool HasCost(InspectionTerms terms, IEnumerable<InspectionMethod> methods) =>
        terms.FailureCost > 0 || terms.RepairCost > 0 || methods.Any(m => m.Cost > 0);

    private static IEnumerable<double> TellAt(double from, double end) =>
        Enumerable.Range(1, Tellings).Select(i => from + ((end - from) * i / Tellings));
}
