using System.Collections.Immutable;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// Replaces the probabilities that sampling cannot reach by rare-event answers: where the method is chosen by the program,
/// those below 1e-3 whose coefficient of variation is over a tenth; where importance sampling was asked for, all.
/// </summary>
internal static class RareDistances
{
    /// <summary>The coefficient of variation from which on a sampled probability is not good enough.</summary>
    private const double PoorCov = 0.1;

    /// <summary>Above this more evaluations are the plain remedy.</summary>
    private const double Rare = 1e-3;

    private const double TwoSided95 = 1.959963984540054;

    public static RiskResult Refine(LifeModel model, RiskResult sampled, RiskQuestion question, RunOptions options)
    {
        if (question.Method is not (RiskMethod.Auto or RiskMethod.Importance) || model.Factors.Factors.IsEmpty)
        {
            return sampled;
        }

        var settings = new RareEventSettings(sampled.Run.Seed) { CrossCheck = question.CrossCheck };
        ImmutableArray<RareEventResult> rare = [.. sampled.Distances
            .Where(d => question.Method == RiskMethod.Importance || IsPoor(d))
            .Select(d => RareEventAnalysis.Run(model, d.DistanceKm, settings, options with { Progress = null }))
            .Where(r => r.FailureFound || question.Method == RiskMethod.Importance)];
        if (rare.IsEmpty)
        {
            return sampled;
        }

        DistanceRisk Better(DistanceRisk d) =>
            rare.FirstOrDefault(r => r.DistanceKm == d.DistanceKm) is { } r ? new(d.DistanceKm, r.Probability, RiskMethod.Importance) : d;
        return sampled with
        {
            AtRequired = Better(sampled.AtRequired),
            Distances = [.. sampled.Distances.Select(Better)],
            RareEvents = rare,
        };
    }

    private static bool IsPoor(DistanceRisk d) =>
        !(d.Probability.Estimate > 0) || (d.Probability.Estimate < Rare && HasPoorCov(d));

    private static bool HasPoorCov(DistanceRisk d) => !(d.Probability.Low > 0) || Math.Log(d.Probability.High / d.Probability.Low) / (2 * TwoSided95) > PoorCov;
}
