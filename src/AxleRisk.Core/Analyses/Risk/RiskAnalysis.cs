using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>Failure probability over distance, lives and damage by leg, by sampling.</summary>
public static class RiskAnalysis
{
    /// <summary>The evaluations of a run unless asked otherwise.</summary>
    public const long DefaultEvaluations = 100_000;

    /// <summary>The distances of the table, as multiples of the required distance.</summary>
    private static readonly ImmutableArray<double> DistanceMultiples = [0.1, 0.2, 0.4, 0.6, 0.8, 1, 1.5, 2, 3, 5];

    private static readonly ImmutableArray<double> LifePercents = [1, 5, 10, 50];

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations, seed, sampling plan.</param>
    /// <param name="method">How to estimate the probabilities.</param>
    /// <param name="distancesKm">The distances of the table; multiples of the required distance where empty.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <exception cref="ArgumentException"><see cref="RiskMethod.Conditional"/> was asked for where the scenario does not allow it.</exception>
    public static RiskResult Run(
        LifeModel model, StudySettings settings, RiskMethod method, ImmutableArray<double> distancesKm, RunOptions options)
    {
        (RiskMethod used, string reason) = Choose(model, method);
        var study = new RiskStudy(model, settings);
        study.Run(options, curve => false, used);
        return Summarise(study, used, reason, distancesKm);
    }

    private static RiskResult Summarise(RiskStudy study, RiskMethod method, string reason, ImmutableArray<double> distancesKm)
    {
        LifeModel model = study.Model;
        StudySettings settings = study.Settings;
        double required = model.Scenario.RequiredKm;
        FailureCurve curve = study.Curve(method);
        IEnumerable<double> distances = (distancesKm.IsDefaultOrEmpty ? DistanceMultiples.Select(m => m * required) : distancesKm)
            .Append(required).Distinct().Order();
        LifeSummary all = study.All();
        return new RiskResult
        {
            RequiredKm = required,
            AtRequired = new DistanceRisk(required, curve.At(required)),
            Distances = [.. distances.Select(d => new DistanceRisk(d, curve.At(d)))],
            Lives = [.. LifePercents.Select(p => new LifeQuantile(p, curve.Life(p / 100)))],
            MedianFactorsLifeKm = BaseCaseAnalysis.MedianFactorsLifeKm(model),
            Legs = [.. model.Scenario.Legs.Select((leg, i) => new LegDamage(leg.Name, all.LegShare(i).MeanInterval()))],
            Method = method,
            MethodReason = reason,
            Run = new RunRecord(
                all.Evaluations, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, study.IsPartial),
        };
    }

    private static (RiskMethod Method, string Reason) Choose(LifeModel model, RiskMethod asked)
    {
        const string Exact = "Miner sum and S-N scatter are lognormal and independent, so their part is averaged exactly";
        const string Counted = "Miner sum and S-N scatter are not both lognormal and independent, so failures are counted";
        return (asked, model.Scale.IsLognormal) switch
        {
            (RiskMethod.Crude, _) => (RiskMethod.Crude, "failures are counted, as asked"),
            (_, true) => (RiskMethod.Conditional, Exact),
            (RiskMethod.Auto, false) => (RiskMethod.Crude, Counted),
            _ => throw new ArgumentException("the conditional method needs a lognormal Miner sum and a normal scatter of log10 N, both independent of all else"),
        };
    }
}
