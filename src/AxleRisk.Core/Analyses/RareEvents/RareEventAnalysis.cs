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
    public static RareEventResult Run(LifeModel model, double distanceKm, RareEventSettings settings, RunOptions options)
    {
        settings.Validate();
        if (!(distanceKm > 0 && double.IsFinite(distanceKm)))
        {
            throw new ArgumentException("the distance must be a number above 0", nameof(distanceKm));
        }

        IReadOnlyList<DiscreteState> discrete = DiscreteState.Of(model.Factors);
        LifeLimitState[] limits = [.. discrete.Select(state => new LifeLimitState(model, distanceKm, state))];
        Stratum[] strata = Search(discrete, limits, settings.Seed, options);
        var sampling = new StratifiedImportance(strata, settings);
        var choice = RareEventChoice.Of(sampling, new LifeLimitState(model, distanceKm, DiscreteState.None), settings, options);
        var words = new RareEventWords(choice, sampling, settings, model.Scale.IsLognormal, strata.Sum(s => s.Points.Points.Count(p => !p.IsApproximate)));
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
                choice.Answer.Evaluations, settings.MaxEvaluations, settings.Seed, choice.Answer.Method, LifeModel.Version, choice.IsPartial),
        };
    }

    private static Stratum[] Search(IReadOnlyList<DiscreteState> discrete, LifeLimitState[] limits, ulong seed, RunOptions options)
    {
        // One state's search is short and goes by its own streams: the states are the blocks.
        BlockRun<Stratum> run = BlockRunner.Run(
            limits.Length, 1, options with { Progress = null, Cancellation = default }, () => 0,
            (_, i, _) => new Stratum(discrete[(int)i].Probability, limits[i], seed, $"rare/{discrete[(int)i].Name}", options.Cancellation));
        return [.. run.Blocks];
    }

    private static ImmutableArray<RareEventState> States(IReadOnlyList<DiscreteState> discrete, LifeLimitState[] limits, Stratum[] strata) =>
        [.. Enumerable.Range(0, strata.Length).OrderByDescending(i => strata[i].Part).Select(i => new RareEventState(
            discrete[i].Name, discrete[i].Probability, strata[i].Mean, [.. strata[i].Points.Points.Select(limits[i].Report)]))];
}
