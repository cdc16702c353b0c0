using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// The failure probability across the range of one factor: held at each of several quantiles, or at each state of a choice,
/// while all others stay as they are. A correlation of the factor is then without effect, as in the ranking.
/// </summary>
public static class FactorRangeAnalysis
{
    /// <summary>The evaluations of each point unless asked otherwise.</summary>
    public const long DefaultEvaluations = 40_000;

    /// <summary>The points of a continuous factor, as shares of the vehicles at or below them.</summary>
    public static ImmutableArray<double> Levels { get; } = [0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99];

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="factor">One of its factors.</param>
    /// <param name="settings">Evaluations of each point, seed, sampling plan.</param>
    /// <param name="options">Threads, progress (in evaluations of all points together), cancellation.</param>
    /// <param name="headline">The risk study's figure, that all points go by; null for this sample's own.</param>
    /// <exception cref="StudyException">The sampling plan has fewer dimensions than the scenario has columns.</exception>
    public static FactorRangeResult Run(LifeModel model, Factor factor, StudySettings settings, RunOptions options,
        RiskHeadline? headline = null)
    {
        (double Level, double Value)[] points = [.. PointsOf(factor)];
        LifeModel[] models = [model, .. points.Select(p => new LifeModel(Held(model.Scenario, factor, p.Value)))];
        ComparisonResult comparison = Comparison.Run(models, model.Scenario.RequiredKm, settings, options);
        comparison = headline is null ? comparison : comparison.With(headline);
        return new FactorRangeResult(
            factor, comparison.DistanceKm, comparison.Cases[0],
            [.. points.Select((p, i) => new HeldPoint(p.Level, p.Value, comparison.Cases[i + 1]))], comparison.IsConditional,
                comparison.Run);
    }

    /// <summary>The number of scenarios that are evaluated: the base and one a point.</summary>
    public static int CasesOf(Factor factor) => 1 + PointsOf(factor).Count();

    private static IEnumerable<(double Level, double Value)> PointsOf(Factor factor) => factor.Distribution switch
    {
        null => [(double.NaN, double.NaN)],
        NumberChoice choice => choice.Values.Select((v, i) => (choice.Weights[i], v)),
        var distribution => Levels.Select(p => (p, distribution.Quantile(p))),
    };

    private static Scenario Held(Scenario scenario, Factor factor, double value) => factor switch
    {
        WordFactor words => Remedy.Apply(scenario, Named(new Change.ToWord(words.Name, WordChoice.Sure(words.Words[(int)value])))),
        MixFactor => scenario with { MixConcentration = null },
        _ => Remedy.Apply(scenario, Named(new Change.ToValue(factor.Name, new Value.Certain(value)))),
    };

    private static Remedy Named(Change change) => new(change.Input, null, [change]);
}
