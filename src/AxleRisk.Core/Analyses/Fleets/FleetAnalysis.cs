using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>Answers for a fleet under warranty: its claims and their cost, the longest warranty, the designs that meet a life.</summary>
public static class FleetAnalysis
{
    /// <summary>The evaluations of the fleet's own sample unless asked otherwise.</summary>
    public const long DefaultEvaluations = 131_072;

    /// <summary>The sampling plan unless asked otherwise.</summary>
    public const string DefaultSampling = "sobol";

    /// <summary>The fewest evaluations of the fleet's own sample.</summary>
    public const long LeastEvaluations = NestedPlan.LeastEvaluations;

    /// <summary>The most, as all are kept in memory.</summary>
    public const long MostEvaluations = NestedPlan.MostEvaluations;

    /// <summary>A design is judged by this part of the evaluations.</summary>
    private const int DesignPart = 4;

    private const double ShortestKm = 100;

    /// <summary>Searched below that only where even that is too far.</summary>
    private const double FirstKm = 1e-3;
    private const double LongestKm = 1e7;

    /// <summary>
    /// About how many evaluations a run takes: a search looks at some fifteen walls, as many tolerances and a few categories.
    /// </summary>
    public static long ExpectedEvaluations(Fleet fleet, long evaluations) =>
        fleet.TargetLife is null ? evaluations : evaluations + (40 * (evaluations / DesignPart));

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready; it states a fleet.</param>
    /// <param name="settings">Evaluations of the fleet's own sample, seed, sampling plan.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <exception cref="StudyException">The scenario or the settings do not allow it; the message says what would.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled before there was an answer.</exception>
    public static FleetResult Run(LifeModel model, StudySettings settings, RunOptions options)
    {
        Fleet fleet = model.Scenario.Fleet ?? throw new ArgumentException("the scenario states no fleet", nameof(model));
        Require(model, settings);
        ImmutableArray<Factor> shared = [.. model.Factors.Factors.Where(NestedPlan.IsShared)];
        ImmutableArray<TargetBasis> bases = shared.IsEmpty ? [TargetBasis.Average] : [TargetBasis.Average, TargetBasis.NinetyPercent];
        NestedPlan plan = NestedPlan.Of(settings, !shared.IsEmpty);
        FleetSample sample = new FleetDraw(plan, options).Draw(model, fleet.KmPerYear);
        DrawMeans byDraw = sample.FailedWithin(fleet.WarrantyMonths, fleet.WarrantyKm);
        Prediction claims = ClaimCounts.Predict(fleet.Vehicles, byDraw);

        NestedPlan designPlan = NestedPlan.Of(settings with
        { Evaluations = Math.Max(settings.Evaluations / DesignPart, LeastEvaluations) }, !shared.IsEmpty);
        var designDraw = new FleetDraw(designPlan, options with { Progress = done => options.Progress?.Invoke(plan.Rows + done) });
        DesignLimits? design = Designs(model, fleet, designDraw, bases, out bool isPartial);
        int designs = (int)(designDraw.Evaluations / designPlan.Rows);
        long evaluations = plan.Rows + designDraw.Evaluations;
        return new FleetResult
        {
            Fleet = fleet,
            Currency = model.Scenario.Currency,
            ClaimRate = DrawStatistic.WithInterval(byDraw, TargetBasis.Average),
            Claims = claims,
            UnknownShare = shared.IsEmpty ? 0 : ClaimCounts.UnknownShare(fleet.Vehicles, byDraw),
            EndedByDistance = sample.EndedByDistance(fleet.WarrantyMonths, fleet.WarrantyKm),
            Months = ClaimCounts.ByMonth(fleet, sample),
            Cost = ClaimCost.Of(fleet, byDraw, claims, settings.Seed, options.Threads),
            Warranty = fleet.TargetClaimRate is double rate ? Warranties(fleet, sample, byDraw, rate, bases) : null,
            Design = design,
            Sampling = new FleetSampling(
                NestedPlan.Replicates, plan.Draws, plan.Inner, designs == 0 ? 0 : designPlan.Draws, designs == 0 ? 0 : designPlan.Inner,
                designs,
                shared, model.Chances.IsExact, model.Modes.Modes.Length, byDraw.ErrorShare, byDraw.Residue(fleet.Vehicles)),
            Run = new RunRecord(evaluations, evaluations, settings.Seed, settings.Sampling, LifeModel.Version, isPartial),
        };
    }

    private static DesignLimits? Designs(LifeModel model, Fleet fleet, FleetDraw draw, ImmutableArray<TargetBasis> bases,
        out bool isPartial)
    {
        isPartial = false;
        try
        {
            return fleet.TargetLife is LifeTarget life ? DesignSearch.Run(model, life, draw, bases) : null;
        }
        catch (OperationCanceledException)
        {
            isPartial = true;
            return null;
        }
    }

    private static WarrantyLimits Warranties(Fleet fleet, FleetSample sample, DrawMeans byDraw, double target,
        ImmutableArray<TargetBasis> bases)
    {
        double[] Meets(double[] probabilities) => [.. probabilities.Select(p => p <= target ? 1.0 : 0)];
        Interval confidence = GroupInterval.Around(
            DrawStatistic.Of(Meets(byDraw.Corrected), TargetBasis.Average),
                DrawStatistic.OfReplicates(Meets(byDraw.CorrectedByReplicate), TargetBasis.Average)).Within(0, 1);
        return new WarrantyLimits(target, confidence,
        [
            .. bases.Select(basis => new WarrantyLimit(
                basis,
                new TargetSearch(months => sample.FailedWithin(months, fleet.WarrantyKm), target, basis).LongestIn(1, Fleet.MostMonths),
                LongestKmOf(new TargetSearch(km => sample.FailedWithin(fleet.WarrantyMonths, km), target, basis)))),
        ]);
    }

    private static SearchAnswer LongestKmOf(TargetSearch search) =>
        search.LongestIn(ShortestKm, LongestKm) is { Outcome: not SearchOutcome.NoneMeets } found
            ? found : search.LongestIn(FirstKm, LongestKm);

    /// <summary>Refuses a correlation between what differs from vehicle to vehicle and what all have in common.</summary>
    /// <exception cref="StudyException">There is one.</exception>
    internal static void RequireOneKind(LifeModel model)
    {
        foreach (RankCorrelation c in model.Scenario.Correlations.Where(c => c.Spearman != 0))
        {
            if (model.Factors.Find(c.First)!.Knowledge != model.Factors.Find(c.Second)!.Knowledge)
            {
                throw new StudyException(
                    $"{c.First} and {c.Second} are correlated, but one varies between vehicles and the other is one unknown value for all: a fleet needs both of one kind");
            }
        }
    }

    private static void Require(LifeModel model, StudySettings settings)
    {
        RequireOneKind(model);
        int columns = model.Factors.ColumnNames.Length + 1;
        int dimensions = SamplingPlan.FromName(settings.Sampling, 1).Dimensions;
        if (columns > dimensions)
        {
            throw new StudyException(
                $"{settings.Sampling} sampling has {dimensions} dimensions and this fleet needs {columns}: choose --sampling {SamplingPlan.Names[0]}");
        }
    }
}
