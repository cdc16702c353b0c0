using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>A sample of the scenario as it stands, without the evidence: how surprising the life is, and which end of a factor is adverse.</summary>
internal sealed class PriorRun
{
    private const int Groups = PosteriorRun.Groups;
    private const int BeforeFrom = 0, BeforeTo = 1, Rows = 2, LnDamage = 3, FirstItem = 4;

    private readonly double[][] groups;

    private PriorRun(double[][] groups) => this.groups = groups;

    /// <summary>P(life below the first distance of the evidence) under the scenario.</summary>
    public Interval FailureBeforeFrom => Probability(BeforeFrom);

    /// <summary>P(life below the last distance of the evidence) under the scenario.</summary>
    public Interval FailureBeforeTo => Probability(BeforeTo);

    /// <summary>Whether more of an item goes with more damage; meaningless for a choice.</summary>
    public bool IsHighAdverse(int item)
    {
        double Sum(int index) => groups.Sum(g => g[index]);
        int at = FirstItem + (2 * item);
        return Sum(at + 1) - (Sum(at) * Sum(LnDamage) / Sum(Rows)) > 0;
    }

    /// <summary>Draws about <paramref name="rows"/> rows.</summary>
    public static PriorRun Of(LifeModel model, (double FromKm, double ToKm) distances, StudySettings settings, int rows, RunOptions options)
    {
        ImmutableArray<CauseItem> items = CauseItem.Of(model);
        int size = Math.Max(1, rows / Groups);
        SamplingPlan plan = SamplingPlan.FromName(settings.Sampling, (long)size * Groups);
        BlockRun<double[]> run = BlockRunner.Run(
            (long)size * Groups, size, options with { Progress = null },
            () => (Workspace: model.CreateWorkspace(size), Values: model.CreateColumns(size), Item: new double[size]),
            (buffers, first, count) =>
            {
                var sums = new double[FirstItem + (2 * items.Length)];
                model.Draw(plan, settings.Seed, "causes/prior", first, count, buffers.Workspace, buffers.Values);
                model.Evaluate(buffers.Values, count, buffers.Workspace);
                for (int row = 0; row < count; row++)
                {
                    sums[BeforeFrom] += FailureProbability(model, buffers.Workspace, row, distances.FromKm);
                    sums[BeforeTo] += FailureProbability(model, buffers.Workspace, row, distances.ToKm);
                    sums[LnDamage] += Math.Log(buffers.Workspace.DamagePerKm[row]);
                }

                sums[Rows] = count;
                for (int i = 0; i < items.Length; i++)
                {
                    items[i].Fill(buffers.Workspace.Unit, buffers.Values, count, buffers.Item);
                    AddItem(sums, FirstItem + (2 * i), buffers.Item, items[i], buffers.Workspace, count);
                }

                return sums;
            });
        options.Cancellation.ThrowIfCancellationRequested();
        return new PriorRun([.. run.Blocks]);
    }

    private static void AddItem(double[] sums, int at, double[] item, CauseItem of, Workspace workspace, int count)
    {
        // Miner sum and scatter lengthen life and leave the damage alone.
        bool isScale = LifeScale.Contains(of.Factor);
        for (int row = 0; row < count; row++)
        {
            sums[at] += item[row];
            sums[at + 1] += item[row] * (isScale ? -item[row] : Math.Log(workspace.DamagePerKm[row]));
        }

        if (isScale)
        {
            // No covariance with the damage stands in the way of the sign.
            sums[at] = 0;
        }
    }

    private static double FailureProbability(LifeModel model, Workspace workspace, int row, double km) =>
        !(km > 0) ? 0
        : model.Scale.IsLognormal ? model.Scale.FailureProbability(km, workspace.DamagePerKm[row])
        : workspace.LifeKm[row] < km ? 1 : 0;

    private Interval Probability(int index) => Jackknife.Estimate(groups, s => s[index] / s[Rows]).Within(0, 1);
}
