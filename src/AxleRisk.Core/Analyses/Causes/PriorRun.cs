using System.Collections.Immutable;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>A sample of the scenario as it stands, without the evidence: which end of a factor is adverse.</summary>
internal sealed class PriorRun
{
    private const int Groups = PosteriorRun.Groups;
    private const int Rows = 0, LnDamage = 1, FirstItem = 2;

    private readonly double[][] groups;

    private PriorRun(double[][] groups) => this.groups = groups;

    /// <summary>Whether more of an item goes with more damage; meaningless for a choice.</summary>
    public bool IsHighAdverse(int item)
    {
        double Sum(int index) => groups.Sum(g => g[index]);
        int at = FirstItem + (2 * item);
        return Sum(at + 1) - (Sum(at) * Sum(LnDamage) / Sum(Rows)) > 0;
    }

    /// <summary>Draws about <paramref name="rows"/> rows.</summary>
    public static PriorRun Of(LifeModel model, StudySettings settings, int rows, RunOptions options)
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
                    sums[LnDamage] += Math.Log(buffers.Workspace.DamagePerKm[row]);
                }

                sums[Rows] = count;
                for (int i = 0; i < items.Length; i++)
                {
                    items[i].Fill(buffers.Workspace.Unit, buffers.Values, count, buffers.Item);
                    AddItem(sums, FirstItem + (2 * i), buffers.Item, model.Chances.ModeOf(items[i].Factor) >= 0, buffers.Workspace, count);
                }

                return sums;
            });
        options.Cancellation.ThrowIfCancellationRequested();
        return new PriorRun([.. run.Blocks]);
    }

    private static void AddItem(double[] sums, int at, double[] item, bool isScale, Workspace workspace, int count)
    {
        // Miner sum and scatters lengthen life and leave the damage alone.
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
}
