using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>Adaptive importance sampling: pilots that follow one another toward the evidence (Oh and Berger 1992).</summary>
internal static class PilotSearch
{
    /// <summary>Pilots at most; they also spend no more than half of the evaluations.</summary>
    private const int MostPilots = 10;

    /// <summary>The share of effective rows at which the prior itself is good enough.</summary>
    private const double GoodShare = 0.25;

    /// <summary>A gain in effective rows below which another pilot is not worth its rows.</summary>
    private const double WorthwhileGain = 1.2;

    /// <summary>An effective size that can be believed.</summary>
    private const double Reliable = 50;

    /// <summary>The rows of each pilot: a twentieth of all, more where that is too few to see where to go.</summary>
    public static int RowsOf(long evaluations) => (int)Math.Clamp(evaluations / 20, Math.Clamp(evaluations / 8, 64, 1000), 20_000);

    /// <summary>The pilot with the most effective rows, and how many there were.</summary>
    public static (Pilot Best, int Count) Run(EvidenceModel model, StudySettings settings, RunOptions options)
    {
        int rows = RowsOf(settings.Evaluations);
        Pilot Draw(Proposal proposal, int number) => Pilot.Run(model, proposal, settings, $"causes/pilot{number}", rows, options);
        Pilot best = Draw(Proposal.PriorOf(model), 1);
        int count = 1;
        long most = Math.Min(MostPilots, settings.Evaluations / 2 / rows);
        bool isSettled = best.EffectiveSize() >= GoodShare * rows;
        while (!isSettled && count < most && ProposalFit.Of(model, best) is { } moved)
        {
            Pilot last = Draw(moved, ++count);
            double before = best.EffectiveSize(), after = last.EffectiveSize();

            // A handful of effective rows says nothing of which pilot is better; the later lies nearer to the evidence.
            best = after > before || before < Reliable ? last : best;
            isSettled = before >= Reliable && after < WorthwhileGain * before;
        }

        return (best, count);
    }
}
