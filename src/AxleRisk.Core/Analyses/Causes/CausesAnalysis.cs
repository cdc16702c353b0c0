using System.Collections.Immutable;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// The investigator's view: the scenario is the prior, what was found on one vehicle the evidence, and a sample weighted
/// with its likelihood the posterior.
/// </summary>
public static class CausesAnalysis
{
    /// <summary>The evaluations of a run unless asked otherwise.</summary>
    public const long DefaultEvaluations = 200_000;

    /// <summary>
    /// The least effective sample size an answer may rest on: a probability near a half is then known to within 7 points.
    /// </summary>
    public const double LeastEffectiveSize = 200;

    /// <summary>Runs the analysis on the scenario's evidence or, where given, on other.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="evidence">The evidence.</param>
    /// <param name="settings">Evaluations, seed, plan.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="planned">
    /// Measurements that could still be made on this vehicle, where it is asked what more would tell of the two leading explanations; null
    /// where it is not.
    /// </param>
    /// <exception cref="StudyException">There is no evidence; it is too surprising for the evaluations; or the explanations'
    /// priors cannot hold.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled before there was anything to tell.</exception>
    public static CausesResult Run(LifeModel model, Evidence evidence, StudySettings settings, RunOptions options,
        ImmutableArray<PlannedMeasurement>? planned = null)
    {
        if (evidence.IsEmpty)
        {
            throw new StudyException("there is no evidence: state [evidence] in the file, or --failed-at, --failed-between or --survived");
        }

        if (model.Factors.Factors.IsEmpty)
        {
            throw new StudyException(
                "no value of the scenario is uncertain, so evidence can change nothing; give at least one a distribution");
        }

        if (evidence.Looks is [.., var last] && evidence.Life?.FailedByKm < last.Km)
        {
            throw new StudyException($"evidence.looks: a look at {last.Km:R} km lies after the failure, by {evidence.Life.FailedByKm:R} km");
        }

        ImmutableArray<CauseItem> items = CauseItem.Of(model);
        double[] patterns = evidence.Explanations.IsEmpty ? [1] : PatternPrior.Of(model, evidence, settings.Seed, options);
        double[] factors = PriorWeights.Of(patterns, [.. evidence.Explanations.Select(e => e.Prior)])
            ?? throw new StudyException(
                "the priors of the explanations cannot all hold: some of these exclude each other or one holds only with another");
        int pilotRows = PilotSearch.RowsOf(settings.Evaluations);
        PriorRun prior = PriorRun.Of(model, settings, pilotRows, options);
        var weighing = new LifeEvidenceModel(model, evidence);
        (Pilot pilot, int pilots) = PilotSearch.Run(weighing, settings, options);
        long spent = (long)pilotRows * (pilots + 1);
        long rows = Math.Max(PosteriorRun.Groups, settings.Evaluations - spent);
        PosteriorTally[] groups = double.IsNegativeInfinity(pilot.Greatest)
            ? []
            : PosteriorRun.Run(
                weighing, pilot, settings, rows, options, ApartSummary.Measurable(evidence, planned, items));
        var sums = new PosteriorSums(groups);
        if (groups.Length < 2 || sums.EffectiveSize < LeastEffectiveSize)
        {
            options.Cancellation.ThrowIfCancellationRequested();
        }

        Refuse(groups.Length < 2 ? 0 : sums.EffectiveSize, settings, evidence);
        long twins = sums.Rows * weighing.TwinEvents.Length;
        ImmutableArray<ExplanationShift> explanations =
            ExplanationSummary.Of(model.Scenario, evidence, patterns, factors, sums, weighing.TwinEvents);
        return new CausesResult
        {
            Evidence = evidence,
            Causes = CauseSummary.Of(items, sums, prior, evidence),
            Explanations = explanations,
            Apart = planned is { } some ? ApartSummary.Of(evidence, explanations, some, items, groups, factors) : null,
            Modes =
            [
                .. model.Modes.Modes.Take(weighing.Modes).Select((mode, m) => new ModeFound(mode, sums.Of(g => g.Modes[m]))),
            ],
            IsConditional = model.Chances.IsExact,
            EffectiveSampleSize = sums.EffectiveSize,
            GreatestShare = sums.GreatestShare,
            Rows = sums.Rows,
            TwinEvaluations = twins,
            Pilots = pilots,
            IsMoved = !pilot.Proposal.IsPrior,
            Run = new RunRecord(
                spent + sums.Rows + twins, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version,
                groups.Length < PosteriorRun.Groups),
        };
    }

    private static void Refuse(double effectiveSize, StudySettings settings, Evidence evidence)
    {
        if (effectiveSize >= LeastEffectiveSize)
        {
            return;
        }

        string wider = evidence.Life is LifeEvidence.FailedAt or LifeEvidence.FailedBetween ? ", a wider --failed-between" : "";
        string coarser = evidence.Measured.IsEmpty ? "" : ", a larger sd of a measurement";
        throw new StudyException(
            $"no answer: of {settings.Evaluations:#,0} evaluations only {effectiveSize:0} effective samples agree with the evidence, and "
            + $"{LeastEffectiveSize:0} are the least; try more --evaluations{wider}{coarser}, and check the evidence against the scenario, "
            + "which may not allow it");
    }
}
