using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>Adaptive importance sampling: pilots that follow one another toward the evidence (Oh and Berger 1992).</summary>
internal static class PilotSearch
{
    /// <summary>Pilots at most.</summary>
    private const int MostPilots = 6;

    /// <summary>The share of effective rows that is good enough to look no further.</summary>
    private const double GoodShare = 0.25;

    /// <summary>A gain in effective rows below which another pilot is not worth its rows.</summary>
    private const double WorthwhileGain = 1.2;

    /// <summary>The rows of each pilot.</summary>
    public static int RowsOf(long evaluations) => (int)Math.Clamp(evaluations / 20, 64, 20_000);

    /// <summary>The pilot with the most effective rows, and how many there were.</summary>
    public static (Pilot Best, int Count) Run(EvidenceModel model, StudySettings settings, RunOptions options)
    {
        int rows = RowsOf(settings.Evaluations);
        Pilot Draw(Proposal proposal, int number) => Pilot.Run(model, proposal, settings, $"causes/pilot{number}", rows, options);
        Pilot best = Draw(Proposal.PriorOf(model), 1), last = best;
        int count = 1;
        while (count < MostPilots && best.EffectiveSize() < GoodShare * rows && ProposalFit.Of(model, last) is { } moved)
        {
            last = Draw(moved, ++count);
            double gain = last.EffectiveSize() / best.EffectiveSize();
            best = gain > 1 ? last : best;

            // While the prior still finds next to nothing, a pilot may be worse than the one before and yet nearer.
            if (gain < WorthwhileGain && last.EffectiveSize() > 100)
            {
                break;
            }
        }

        return (best, count);
    }
}
