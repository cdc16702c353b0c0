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
        Stratum[] strata = new Stratum[limits.Length];
        Parallel.For(0, strata.Length, new ParallelOptions { MaxDegreeOfParallelism = options.Threads }, i =>
            strata[i] = new Stratum(discrete[i].Probability, limits[i], settings.Seed, $"rare/{discrete[i].Name}"));
        var sampling = new StratifiedImportance(strata, settings);
        bool whole = sampling.Run(options);
        RareEventEstimate? check = settings.CrossCheck && whole
            ? SubsetSimulation.Run(new LifeLimitState(model, distanceKm, DiscreteState.None), settings.Seed, options)
            : null;
        long search = strata.Sum(s => s.SearchEvaluations);
        long sampled = strata.Sum(s => s.SamplingEvaluations);
        var words = new RareEventWords(sampling, settings, model.Scale.IsLognormal, strata.Sum(s => s.Points.Points.Count), check);
        return new RareEventResult
        {
            DistanceKm = distanceKm,
            Probability = sampling.Probability,
            Cov = sampling.Cov,
            FailureFound = sampling.Estimate > 0,
            Method = words.Method,
            MethodReason = words.Reason,
            Doubt = words.Doubt,
            States = States(discrete, limits, strata),
            EffectiveSize = sampling.EffectiveSize,
            LargestShare = sampling.LargestShare,
            SearchEvaluations = search,
            SamplingEvaluations = sampled,
            CrossCheck = check,
            Run = new RunRecord(search + sampled, settings.MaxEvaluations, settings.Seed, "importance", LifeModel.Version, !whole),
        };
    }

    private static ImmutableArray<RareEventState> States(IReadOnlyList<DiscreteState> discrete, LifeLimitState[] limits, Stratum[] strata) =>
        [.. Enumerable.Range(0, strata.Length).OrderByDescending(i => strata[i].Part).Select(i => new RareEventState(
            discrete[i].Name, discrete[i].Probability, strata[i].Mean, [.. strata[i].Points.Points.Select(limits[i].Report)]))];
}
