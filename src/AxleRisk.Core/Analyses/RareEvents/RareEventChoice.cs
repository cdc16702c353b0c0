using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// Which method answers: importance sampling, unless a few samples carry it or it found nothing to sample; then subset
/// simulation, which needs no design point. The other one, where it was run, is the cross-check.
/// </summary>
/// <param name="Answer">The answer.</param>
/// <param name="Check">The cross-check; null where none was run.</param>
/// <param name="IsSubset">Whether the answer is that of subset simulation.</param>
/// <param name="IsPartial">Whether the run was cancelled before its end.</param>
internal sealed record RareEventChoice(RareEventEstimate Answer, RareEventEstimate? Check, bool IsSubset, bool IsPartial)
{
    /// <summary>The name of importance sampling.</summary>
    public const string Importance = "importance sampling";

    /// <summary>What was not found to fail is worth a second look unless it is rarer than this.</summary>
    private const double Negligible = 1e-10;

    /// <summary>Runs importance sampling and, where it is asked for or needed, subset simulation.</summary>
    /// <param name="sampling">Importance sampling, ready to run.</param>
    /// <param name="whole">The limit state with no discrete factor held, for subset simulation.</param>
    /// <param name="settings">Seed, target, limit, cross-check.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    public static RareEventChoice Of(StratifiedImportance sampling, LimitState whole, RareEventSettings settings, RunOptions options)
    {
        bool complete = sampling.Run(options);
        var importance = new RareEventEstimate(Importance, sampling.Probability, sampling.Cov, sampling.Spent);
        bool isUnfit = sampling.IsDegenerate || (sampling.Estimate == 0 && sampling.Unresolved > Negligible);
        if (!complete || !(settings.CrossCheck || isUnfit))
        {
            return new RareEventChoice(importance, null, false, !complete);
        }

        RareEventEstimate? subset = SubsetSimulation.Run(whole, settings.Seed, options);
        return subset is { Probability.Estimate: > 0 } && isUnfit
            ? new RareEventChoice(subset, importance, true, false)
            : new RareEventChoice(importance, subset, false, subset is null);
    }
}
