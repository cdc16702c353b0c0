using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>Compares scenarios by common random numbers, so that a small change stands out from the error of sampling.</summary>
public static class Comparison
{
    /// <summary>The evaluations of each scenario unless asked otherwise.</summary>
    public const long DefaultEvaluations = 100_000;

    /// <summary>
    /// The sampling plan unless asked otherwise: that of the risk study, so that the first scenario has its digits, where it has
    /// the dimensions for all.
    /// </summary>
    public static string DefaultSampling(IReadOnlyList<LifeModel> models) => RiskAnalysis.DefaultSampling(new CommonDraw(models).Columns);

    /// <summary>Runs the comparison.</summary>
    /// <param name="models">The scenarios made ready, at least one; the first is what the others are compared with.</param>
    /// <param name="distanceKm">The distance of the failure probabilities, km, above 0.</param>
    /// <param name="settings">Evaluations of each scenario, seed, sampling plan.</param>
    /// <param name="options">Threads, progress (in evaluations of all scenarios together), cancellation.</param>
    /// <exception cref="StudyException">The sampling plan has fewer dimensions than the scenarios have columns.</exception>
    public static ComparisonResult Run(IReadOnlyList<LifeModel> models, double distanceKm, StudySettings settings, RunOptions options) =>
        Run(models, distanceKm, settings, options, []);

    /// <summary>The same, with what pairs of changes do together against what they do apart.</summary>
    /// <param name="models">The scenarios made ready; the first is what the others are compared with.</param>
    /// <param name="distanceKm">The distance, km.</param>
    /// <param name="settings">Evaluations of each scenario, seed, sampling plan.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="products">The places among the scenarios of one with two changes, and of those with each alone.</param>
    internal static ComparisonResult Run(
        IReadOnlyList<LifeModel> models, double distanceKm, StudySettings settings, RunOptions options,
        IReadOnlyList<(int Joint, int A, int B)> products)
    {
        ArgumentOutOfRangeException.ThrowIfZero(models.Count);
        var draw = new CommonDraw(models);
        var plan = new BlockPlan(settings, draw.Columns);
        bool conditional = models.All(m => m.Chances.IsExact);
        int groups = plan.Replicates > 1 ? plan.Replicates : GroupInterval.Independent;
        CaseLives[] lives = [.. models.Select(m => new CaseLives(m, distanceKm, groups, conditional))];
        long rows = 0;
        ComparisonTally[] workers = BlockRunner.CreateWorkers(options, plan.Blocks,
            () => new ComparisonTally(models, draw, plan, settings.Seed));
        long end = BlockRunner.Run(workers, 0, plan.Blocks, (worker, block) =>
        {
            long soFar = Interlocked.Add(ref rows, worker.Work(block, lives));
            options.Progress?.Invoke(soFar * models.Count);
        }, options.Cancellation);
        CaseEstimate[] estimates = Estimates(lives, distanceKm, !conditional, options.Threads);
        return new ComparisonResult
        {
            DistanceKm = distanceKm,
            Cases =
            [
                .. estimates.Select((e, i) =>
                    new ComparedCase(e.ProbabilityInterval(), e.B10Interval(), i == 0 ? null : e.From(estimates[0]))),
            ],
            Products = [.. products.Select(p => estimates[p.Joint].OverProduct(estimates[0], estimates[p.A], estimates[p.B]))],
            IsConditional = conditional,
            Run = new RunRecord(rows, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, end < plan.Blocks),
        };
    }

    private static CaseEstimate[] Estimates(CaseLives[] lives, double distanceKm, bool counted, int threads) =>
    [
        .. lives.AsParallel().AsOrdered().WithDegreeOfParallelism(Math.Min(threads, 512))
            .Select(l => new CaseEstimate(l, distanceKm, counted)),
    ];
}
