using System.Collections.Immutable;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>Failure probabilities that counting would not reach: design points and importance sampling about them.</summary>
public static class RareEventAnalysis
{
    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="distanceKm">The distance, km, above 0.</param>
    /// <param name="settings">Seed, target, limit, cross-check.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <exception cref="ArgumentException">The distance or a setting is outside its range.</exception>
    public static RareEventResult Run(LifeModel model, double distanceKm, RareEventSettings settings, RunOptions options) =>
        distanceKm > 0 && double.IsFinite(distanceKm)
        ? Run(model, state => new LifeLimitState(model, distanceKm, state), "rare", distanceKm, settings, options)
        : throw new ArgumentException("the distance must be a number above 0", nameof(distanceKm));

    /// <summary>The same of any event of a scenario's factors.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="limitOf">The limit state with a state of the discrete factors held.</param>
    /// <param name="stream">The name of the random streams, of this event alone.</param>
    /// <param name="distanceKm">The distance to be told with the result.</param>
    /// <param name="settings">Seed, target, limit, cross-check.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    internal static RareEventResult Run(
        LifeModel model, Func<DiscreteState, FactorLimitState> limitOf, string stream, double distanceKm, RareEventSettings settings,
            RunOptions options)
    {
        settings.Validate();
        IReadOnlyList<DiscreteState> discrete = DiscreteState.Of(model.Factors);
        FactorLimitState[] limits = [.. discrete.Select(limitOf)];
        Stratum[] strata = Search(discrete, limits, stream, settings.Seed, options);
        var sampling = new StratifiedImportance(strata, settings);
        var choice = RareEventChoice.Of(sampling, limitOf(DiscreteState.None), settings, options);
        var words = new RareEventWords(choice, sampling, settings, Averaged(model),
            strata.Sum(s => s.Points.Points.Count(p => !p.IsApproximate)));
        return new RareEventResult
        {
            DistanceKm = distanceKm,
            Probability = choice.Answer.Probability,
            Cov = choice.Answer.Cov,
            FailureFound = choice.Answer.Probability.Estimate > 0,
            Method = words.Method,
            MethodReason = words.Reason,
            Doubt = words.Doubt,
            States = States(discrete, limits, strata),
            EffectiveSize = sampling.EffectiveSize,
            LargestShare = sampling.LargestShare,
            SearchEvaluations = strata.Sum(s => s.SearchEvaluations),
            SamplingEvaluations = strata.Sum(s => s.SamplingEvaluations),
            CrossCheck = choice.Check,
            Run = new RunRecord(
                choice.Answer.Evaluations, settings.MaxEvaluations, settings.Seed, choice.Answer.Method, LifeModel.Version,
                choice.IsPartial),
        };
    }

    private static string Averaged(LifeModel model) => !model.Chances.IsExact ? ""
        : model.Chances.Modes.Length == 1
            ? ", Miner sum and S-N scatter averaged exactly" : ", Miner sum and the scatters of all modes averaged exactly";

    private static Stratum[] Search(IReadOnlyList<DiscreteState> discrete, FactorLimitState[] limits, string stream, ulong seed,
        RunOptions options)
    {
        // One state's search is short and goes by its own streams: the states are the blocks.
        BlockRun<Stratum> run = BlockRunner.Run(
            limits.Length, 1, options with { Progress = null, Cancellation = default }, () => 0,
            (_, i, _) => new Stratum(discrete[(int)i].Probability, limits[i], seed, $"{stream}/{discrete[(int)i].Name}",
                options.Cancellation));
        return [.. run.Blocks];
    }

    private static ImmutableArray<RareEventState> States(IReadOnlyList<DiscreteState> discrete, FactorLimitState[] limits,
        Stratum[] strata) =>
        [.. Enumerable.Range(0, strata.Length).OrderByDescending(i => strata[i].Part).Select(i => new RareEventState(
            discrete[i].Name, discrete[i].Label, discrete[i].Probability, strata[i].Mean,
            [.. strata[i].Points.Points.Select(limits[i].Report)]))];
}
