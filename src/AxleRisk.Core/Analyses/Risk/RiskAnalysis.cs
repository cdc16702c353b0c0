using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>Failure probability over distance, lives and damage by leg, by sampling.</summary>
public static class RiskAnalysis
{
    /// <summary>The evaluations of a run unless asked otherwise.</summary>
    public const long DefaultEvaluations = 100_000;

    // Of a line drawn: a rare-event answer costs as much as tens of thousands of evaluations, and the line is smooth.
    private const int EveryOfRare = 8;

    /// <summary>The distances of the table, as multiples of the required distance.</summary>
    private static readonly ImmutableArray<double> DistanceMultiples = [0.1, 0.2, 0.4, 0.6, 0.8, 1, 1.5, 2, 3, 5];

    private static readonly ImmutableArray<double> LifePercents = [1, 5, 10, 50];

    /// <summary>Runs a study or a part of one.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations, seed, sampling plan.</param>
    /// <param name="question">Method, distances, when to stop, which part, where to go on from.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <returns>The result and the state behind it.</returns>
    /// <exception cref="StudyException">The conditional method or the sampling plan does not fit the scenario, or the state to go
    /// on from the study.</exception>
    public static (RiskResult Result, RiskState State) Run(LifeModel model, StudySettings settings, RiskQuestion question,
        RunOptions options)
    {
        (RiskMethod method, _) = Choose(model, question.Method);
        if (options.Share is not null && (question.UntilCov > 0 || question.Part != StudyPart.Whole || question.From is not null))
        {
            throw new StudyException("a study whose work is shared is run whole: it has no end before its evaluations, and no part of its own");
        }

        var study = new RiskStudy(model, settings, question.Part);
        if (question.From is { } from)
        {
            study.GoOnFrom(from);
        }

        RareEventResult? instead = null;
        bool isFirst = true;
        Func<bool>? isDue = question.UntilCov > 0 ? null : question.IsCheckpointDue;
        study.Run(options, isDue, question.Checkpoint is null && !(question.UntilCov > 0) ? null : s =>
        {
            question.Checkpoint?.Invoke(s.State);
            if (!(question.UntilCov > 0))
            {
                return false;
            }

            FailureCurve curve = CurveOf(model, s.State, method, options);
            double required = model.Scenario.RequiredKm, cov = curve.CoefficientOfVariation(required);
            if (isFirst && question.Part == StudyPart.Whole && !(cov <= question.UntilCov))
            {
                instead = RareDistances.InPlaceOfMore(model, curve.At(required), cov, question, settings, options);
            }

            isFirst = false;
            return cov <= question.UntilCov || instead is not null;
        });
        RiskState state = study.State;
        return (Summarise(model, state, question, instead is null ? [] : [instead], options, study.IsPartial), state);
    }

    /// <summary>The result of a state: of a whole study, or of as much of it as the state has.</summary>
    /// <param name="model">The scenario of the state.</param>
    /// <param name="state">The state.</param>
    /// <param name="question">Method and distances.</param>
    /// <param name="options">How to run the rare-event answers; none are sought for a part of a study or a run ended early.</param>
    /// <param name="isPartial">Whether to mark the result as that of a run ended early.</param>
    public static RiskResult Summarise(LifeModel model, RiskState state, RiskQuestion question, RunOptions options, bool isPartial) =>
        Summarise(model, state, question, [], options, isPartial);

    /// <summary>The failure probability at distances, from the sampled part of a state alone: what a picture needs.</summary>
    /// <param name="model">The scenario of the state.</param>
    /// <param name="state">The state.</param>
    /// <param name="distancesKm">The distances, km.</param>
    /// <param name="options">Threads.</param>
    public static ImmutableArray<DistanceRisk> Curve(LifeModel model, RiskState state, IEnumerable<double> distancesKm, RunOptions options)
    {
        (RiskMethod method, _) = Choose(model, RiskMethod.Auto);
        return Answers(CurveOf(model, state, method, options), distancesKm, method, options);
    }

    /// <summary>
    /// The failure probability at the distances of a result and at others between, as a line is drawn through them: where rare-event
    /// methods have to answer, a few of these do.
    /// </summary>
    /// <param name="model">The scenario of the state.</param>
    /// <param name="state">The state.</param>
    /// <param name="result">Its result.</param>
    /// <param name="between">The other distances, km, ascending.</param>
    /// <param name="options">Threads, cancellation.</param>
    public static RiskResult Drawn(
        LifeModel model, RiskState state, RiskResult result, ImmutableArray<double> between, RunOptions options)
    {
        ImmutableArray<DistanceRisk> sampled = Curve(model, state, between, options);
        IEnumerable<double> kept = between.Where((_, i) => i % EveryOfRare == 0
            || (result.Method != RiskMethod.Importance && !RareDistances.IsPoor(sampled[i].Probability)));
        var question = new RiskQuestion
        {
            Method = result.Method,
            DistancesKm = [.. result.Distances.Select(d => d.DistanceKm), .. kept],
            IsOfProbabilities = true,
        };
        return Summarise(model, state, question, result.RareEvents, options, isPartial: false) with { Depths = result.Depths };
    }

    private static RiskResult Summarise(
        LifeModel model, RiskState state, RiskQuestion question, ImmutableArray<RareEventResult> known, RunOptions options,
        bool isPartial)
    {
        (RiskMethod method, string reason) = Choose(model, question.Method);
        double required = model.Scenario.RequiredKm;
        FailureCurve curve = CurveOf(model, state, method, options);
        IEnumerable<double> distances =
            (question.DistancesKm.IsDefaultOrEmpty ? DistanceMultiples.Select(m => m * required) : question.DistancesKm)
            .Append(required).Distinct().Order();
        LifeSummary all = curve.All.Evaluations > 0 ? curve.All : LifeSummary.Sum(state.Replicates);
        StudySettings settings = state.Settings;
        ImmutableArray<DistanceRisk> distanceRisks = Answers(curve, distances, method, options);
        var sampled = new RiskResult
        {
            RequiredKm = required,
            AtRequired = new DistanceRisk(required, curve.At(required), method),
            Distances = distanceRisks,
            Picture = Answers(curve, question.PictureKm, method, options),
            Lives = [.. OnAllCores(LifePercents, options, p => new LifeQuantile(p, curve.Life(p / 100)))],
            MedianFactorsLifeKm = BaseCaseAnalysis.MedianFactorsLifeKm(model),
            Legs = [.. model.Scenario.Legs.Select((leg, i) => new LegDamage(leg.Name, all.LegShare(i).MeanInterval()))],
            Method = method,
            MethodReason = reason,
            Modes = ModeRisk.Of(model, all, distanceRisks, method == RiskMethod.Crude),
            Run = new RunRecord(all.Evaluations, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, isPartial),
        };
        bool isWhole = !isPartial && state.FirstBlock == 0 && state.EndBlock == BlocksOf(settings);
        sampled = isWhole && !question.IsOfProbabilities ? sampled with { Depths = CrackDepths.Of(model, settings, options) } : sampled;
        return isWhole ? RareDistances.Refine(model, sampled, question, known, options) : sampled;
    }

    /// <summary>
    /// What to ask where nobody says otherwise. Of a slow damage model: go on until the probability at the required distance is known to a
    /// tenth of itself, by the method that gets there with the fewest evaluations.
    /// </summary>
    public static RiskQuestion UsualQuestion(LifeModel model) => new() { UntilCov = model.IsSlow ? 0.1 : 0 };

    /// <summary>Evaluations and sampling where nobody says otherwise; few of a slow damage model.</summary>
    public static StudySettings UsualSettings(LifeModel model, ulong seed = StudySettings.DefaultSeed) =>
        new(model.Affordable(DefaultEvaluations), seed, DefaultSampling(model));

    /// <summary>The sampling plan that serves a scenario best: Sobol' points where there are dimensions enough for its factors.</summary>
    public static string DefaultSampling(LifeModel model) => DefaultSampling(model.Factors.ColumnNames.Length);

    /// <summary>The same for so many columns.</summary>
    public static string DefaultSampling(int columns)
    {
        string sobol = SamplingPlan.Names[^1];
        return columns <= SamplingPlan.FromName(sobol, 1).Dimensions ? sobol : SamplingPlan.Names[0];
    }

    /// <summary>The number of blocks that a study of these settings is cut into.</summary>
    public static long BlocksOf(StudySettings settings) => new BlockPlan(settings, 1).Blocks;

    /// <summary>Joins finished parts of one study, in any order, to the whole.</summary>
    /// <exception cref="StudyException">They are not all of one study's parts, each once.</exception>
    public static RiskState Join(IReadOnlyList<RiskState> parts)
    {
        RiskState[] sorted = [.. parts.OrderBy(p => p.FirstBlock).ThenBy(p => p.EndBlock)];
        long next = 0;
        foreach (RiskState part in sorted)
        {
            if (part.Settings != sorted[0].Settings || part.FirstBlock != next)
            {
                throw new StudyException("the parts do not make one whole study, each part once");
            }

            next = part.EndBlock;
        }

        IEnumerable<LifeSummary> replicates = Enumerable.Range(0, sorted[0].Replicates.Length)
            .Select(r => LifeSummary.Sum([.. sorted.Select(p => p.Replicates[r])]));
        return new RiskState(sorted[0].Settings, 0, next, next, [.. replicates]);
    }

    private static ImmutableArray<DistanceRisk> Answers(
        FailureCurve curve, IEnumerable<double> distancesKm, RiskMethod method, RunOptions options) =>
        [.. OnAllCores(distancesKm, options, d => new DistanceRisk(d, curve.At(d), method))];

    // Each answer reads every bin of every replicate: after a long run on many cores that would be most of what one core does alone.
    private static ParallelQuery<TAnswer> OnAllCores<T, TAnswer>(IEnumerable<T> questions, RunOptions options, Func<T, TAnswer> answer) =>
        questions.AsParallel().AsOrdered().WithDegreeOfParallelism(options.Threads).Select(answer);

    private static FailureCurve CurveOf(LifeModel model, RiskState state, RiskMethod method, RunOptions options) => new(
        [.. state.Replicates.Where(s => s.Evaluations > 0)], method == RiskMethod.Conditional ? model.Scale : null,
        isExact: model.Modes.IsPlain && model.Factors.Factors.IsEmpty, options.Threads);

    private static (RiskMethod Method, string Reason) Choose(LifeModel model, RiskMethod asked)
    {
        const string Exact = "Miner sum and S-N scatter are lognormal and independent, so their part is averaged exactly";
        const string ExactModes =
            "given the other factors, the chance left in every mode of failure is independent and known, so it is averaged exactly";
        const string Counted = "Miner sum and S-N scatter are not both lognormal and independent, so failures are counted";
        return (asked, model.Chances.IsExact) switch
        {
            (RiskMethod.Crude, _) => (RiskMethod.Crude, "failures are counted, as asked"),
            (_, true) => (RiskMethod.Conditional, model.Modes.IsPlain ? Exact : ExactModes),
            (RiskMethod.Auto or RiskMethod.Importance, false) => (RiskMethod.Crude, Counted),
            _ => throw new StudyException(
                "the conditional method needs a lognormal Miner sum and a normal scatter of log10 N, both independent of all else"),
        };
    }
}
