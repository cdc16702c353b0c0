using System.Collections.Immutable;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// Replaces the probabilities that sampling cannot reach by rare-event answers: where the method is chosen by the program,
/// those below 1e-3 whose coefficient of variation is over a tenth; where importance sampling was asked for, all; where the
/// conditional method was asked for, those that a few evaluations carry.
/// </summary>
internal static class RareDistances
{
    /// <summary>The coefficient of variation from which on a sampled probability is not good enough.</summary>
    private const double PoorCov = 0.1;

    /// <summary>Above this more evaluations are the plain remedy.</summary>
    private const double Rare = 1e-3;

    /// <summary>The same where an evaluation is dear.</summary>
    private const double RareForSlow = 0.05;

    private const double TwoSided95 = 1.959963984540054;

    /// <summary>How much longer sampling would have to go on before importance sampling is tried instead.</summary>
    private const double MuchLonger = 4;

    /// <summary>
    /// The rare-event answer at the required distance where a run that goes on until its answer is good enough does better with
    /// it than with more evaluations: asked after the first round, before the budget is spent. Null where sampling serves, or
    /// where importance sampling does not reach the coefficient of variation.
    /// </summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="sampled">The probability at the required distance so far.</param>
    /// <param name="cov">Its coefficient of variation.</param>
    /// <param name="question">Method, coefficient of variation to reach.</param>
    /// <param name="settings">Seed, and as evaluations the most to be spent.</param>
    /// <param name="options">Threads, cancellation.</param>
    public static RareEventResult? InPlaceOfMore(
        LifeModel model, Interval sampled, double cov, RiskQuestion question, StudySettings settings, RunOptions options)
    {
        bool isRare = !(sampled.Estimate >= (model.IsSlow ? RareForSlow : Rare)) && !(Math.Pow(cov / question.UntilCov, 2) <= MuchLonger);
        if (!(question.Method == RiskMethod.Importance || (question.Method == RiskMethod.Auto && isRare)) || model.Factors.Factors.IsEmpty)
        {
            return null;
        }

        var own = new RareEventSettings(settings.Seed)
        {
            CrossCheck = question.CrossCheck,
            TargetCov = question.UntilCov,
            MaxEvaluations = settings.Evaluations,
        };
        RareEventResult result = RareEventAnalysis.Run(model, model.Scenario.RequiredKm, own, options with { Progress = null });
        return result is { FailureFound: true, Doubt: null } && result.Cov <= question.UntilCov ? result : null;
    }

    /// <summary>The result with rare-event answers where they are needed.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="sampled">The sampled result.</param>
    /// <param name="question">The method.</param>
    /// <param name="known">The answers that there are already.</param>
    /// <param name="options">Threads, cancellation.</param>
    public static RiskResult Refine(
        LifeModel model, RiskResult sampled, RiskQuestion question, ImmutableArray<RareEventResult> known, RunOptions options)
    {
        if (question.Method == RiskMethod.Crude || model.Factors.Factors.IsEmpty)
        {
            return sampled;
        }

        var settings = new RareEventSettings(sampled.Run.Seed) { CrossCheck = question.CrossCheck };
        settings = settings with { MaxEvaluations = model.Affordable(settings.MaxEvaluations) };
        RareEventResult? Known(double km) => known.FirstOrDefault(r => r.DistanceKm == km);
        RareEventResult Answer(double km) => Known(km) ?? RareEventAnalysis.Run(model, km, settings, options with { Progress = null });
        ImmutableArray<RareEventResult> rare = [.. sampled.Distances
            .Where(d => Known(d.DistanceKm) is not null || IsWanted(d, question.Method))
            .Select(d => (Sampled: d, Rare: Answer(d.DistanceKm)))
            .Where(x => x.Rare.FailureFound || question.Method == RiskMethod.Importance
                || (!x.Sampled.IsResolved && x.Rare.Probability.High < x.Sampled.Probability.High))
            .Select(x => x.Rare)];
        if (rare.IsEmpty)
        {
            return sampled;
        }

        DistanceRisk Better(DistanceRisk d) =>
            rare.FirstOrDefault(r => r.DistanceKm == d.DistanceKm) is { } r
                ? new(d.DistanceKm, ProbabilityOf(r), RiskMethod.Importance) : d;
        return sampled with
        {
            AtRequired = Better(sampled.AtRequired),
            Distances = [.. sampled.Distances.Select(Better)],
            RareEvents = rare,
        };
    }

    // Asked for by name, the conditional method keeps what it can answer at all.
    private static bool IsWanted(DistanceRisk d, RiskMethod asked) => asked switch
    {
        RiskMethod.Importance => true,
        RiskMethod.Conditional => !d.IsResolved,
        _ => IsPoor(d.Probability),
    };

    private static Interval ProbabilityOf(RareEventResult r) => r.FailureFound ? r.Probability : r.Probability with
    { Estimate = double.NaN };

    /// <summary>Whether a sampled probability is worth a rare-event answer.</summary>
    public static bool IsPoor(Interval p) => !(p.Estimate > 0) || (p.Estimate < Rare && HasPoorCov(p));

    private static bool HasPoorCov(Interval p) => !(p.Low > 0) || Math.Log(p.High / p.Low) / (2 * TwoSided95) > PoorCov;
}
