using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>What one block adds to the risk: small, and joined by adding.</summary>
internal sealed record RiskBlock(PowerSums[] Failure, PowerSums[] LegShare, double[] LivesKm);

/// <summary>The work of one block of the risk analysis.</summary>
internal sealed class RiskTally(LifeModel model, StudySettings settings, RiskMethod method, double[] distancesKm)
{
    private readonly SamplingPlan plan = SamplingPlan.FromName(settings.Sampling, settings.Evaluations);

    public (Workspace Workspace, double[][] Values) CreateWorker() =>
        (model.CreateWorkspace(StudySettings.BlockSize), model.CreateColumns(StudySettings.BlockSize));

    public RiskBlock Work((Workspace Workspace, double[][] Values) worker, long first, int count)
    {
        (Workspace w, double[][] values) = worker;
        model.Draw(plan, settings.Seed, "", first, count, w, values);
        model.Evaluate(values, count, w);
        var failure = new PowerSums[distancesKm.Length];
        var legShare = new PowerSums[w.DamageByLeg.Length];
        for (int d = 0; d < failure.Length; d++)
        {
            for (int row = 0; row < count; row++)
            {
                failure[d] = failure[d].Plus(FailureProbability(distancesKm[d], w, row));
            }
        }

        for (int leg = 0; leg < legShare.Length; leg++)
        {
            for (int row = 0; row < count; row++)
            {
                double share = w.DamageByLeg[leg][row] / w.DamagePerKm[row];

                // No wall left: the damage is infinite on every leg and has no shares.
                legShare[leg] = double.IsNaN(share) ? legShare[leg] : legShare[leg].Plus(share);
            }
        }

        return new RiskBlock(failure, legShare, w.LifeKm.AsSpan(0, count).ToArray());
    }

    private double FailureProbability(double distanceKm, Workspace w, int row) =>
        method == RiskMethod.Conditional ? model.Scale.FailureProbability(distanceKm, w.DamagePerKm[row])
        : w.LifeKm[row] < distanceKm ? 1 : 0;
}
