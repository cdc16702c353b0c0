using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>One thread's work on a comparison: draws a block once and evaluates it in every scenario.</summary>
internal sealed class ComparisonTally(IReadOnlyList<LifeModel> models, CommonDraw draw, BlockPlan plan, ulong seed)
{
    private readonly double[][] unit = Workspace.Columns(draw.Columns, StudySettings.BlockSize);
    private readonly double[][] coupled = Workspace.Columns(draw.Columns, StudySettings.BlockSize);
    private readonly Workspace[] workspaces = [.. models.Select(m => m.CreateWorkspace(StudySettings.BlockSize))];
    private readonly double[][][] values = [.. models.Select(m => m.CreateColumns(StudySettings.BlockSize))];

    /// <summary>Evaluates a block and adds it to what is kept of each scenario.</summary>
    /// <returns>The number of its samples.</returns>
    public int Work(long block, CaseLives[] lives)
    {
        (int replicate, long first, int rows) = plan[block];
        draw.Draw(plan.PlanOf(replicate), seed, plan.StreamOf(replicate), first, rows, unit);
        for (int m = 0; m < models.Count; m++)
        {
            draw.Map(m, unit, coupled, workspaces[m], values[m], rows);
            models[m].Evaluate(values[m], rows, workspaces[m]);
            lives[m].Add(workspaces[m], rows, row => plan.Replicates > 1 ? replicate : (int)((first + row) % GroupInterval.Independent));
        }

        return rows;
    }
}
