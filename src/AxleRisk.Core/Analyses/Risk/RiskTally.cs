using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>One thread's work on the risk: evaluates blocks and keeps a summary for each replicate.</summary>
internal sealed class RiskTally(LifeModel model, ulong seed, BlockPlan plan)
{
    private readonly Workspace workspace = model.CreateWorkspace(StudySettings.BlockSize);
    private readonly double[][] values = model.CreateColumns(StudySettings.BlockSize);
    private readonly double[] lnDamage = new double[StudySettings.BlockSize];
    private readonly double[] lnScale = new double[StudySettings.BlockSize];
    private readonly ModeTally modeTally = new(
        model.Chances, StudySettings.BlockSize, NewSummary(model).Modes?.Count ?? 0);
    private readonly double[] perDamage = new double[StudySettings.BlockSize];
    private readonly double[] shareSums = new double[model.Scenario.Legs.Length];
    private readonly double[] shareSquares = new double[model.Scenario.Legs.Length];

    /// <summary>The summaries so far; null for a replicate this thread has not met.</summary>
    public LifeSummary?[] Summaries { get; } = new LifeSummary?[plan.Replicates];

    /// <summary>An empty summary of a scenario.</summary>
    public static LifeSummary NewSummary(LifeModel model) => new(
        model.Scenario.Legs.Length, model.Modes.IsPlain ? null : new ModeTable(
            model.Scenario.RequiredKm, model.Modes.Modes.Length, Stretches.BendsKm(model.Scenario)));

    /// <summary>Evaluates a block.</summary>
    /// <returns>The number of its evaluations.</returns>
    public int Work(long block)
    {
        (int replicate, long first, int rows) = plan[block];
        model.Draw(plan.PlanOf(replicate), seed, plan.StreamOf(replicate), first, rows, workspace, values);
        model.Evaluate(values, rows, workspace);
        LifeSummary summary = Summaries[replicate] ??= NewSummary(model);
        VectorColumns.Log(workspace.DamagePerKm.AsSpan(0, rows), lnDamage.AsSpan(0, rows));
        if (summary.Modes is { } table)
        {
            AddModes(summary, table, rows);
            AddShares(summary, rows);
            return rows;
        }

        VectorColumns.Log(workspace.Scale.AsSpan(0, rows), lnScale.AsSpan(0, rows));
        for (int row = 0; row < rows; row++)
        {
            summary.Damage.AddLn(lnDamage[row]);
            summary.Life.AddLn(lnScale[row] - lnDamage[row]);
        }

        AddShares(summary, rows);
        return rows;
    }

    private void AddModes(LifeSummary summary, ModeTable table, int rows)
    {
        for (int row = 0; row < rows; row++)
        {
            summary.Damage.AddLn(lnDamage[row]);
            summary.Life.AddLn(Math.Log(workspace.LifeKm[row]));
        }

        modeTally.Add(workspace, rows, table);
    }

    private void AddShares(LifeSummary summary, int rows)
    {
        // No wall left: the damage is infinite and has no shares; no damage has none either.
        Span<double> inverse = perDamage.AsSpan(0, rows);
        long finite = FiniteColumns.Inverse(workspace.DamagePerKm.AsSpan(0, rows), inverse);
        for (int leg = 0; leg < shareSums.Length; leg++)
        {
            (shareSums[leg], shareSquares[leg]) = FiniteColumns.SumsOfProducts(workspace.DamageByLeg[leg].AsSpan(0, rows), inverse);
        }

        summary.AddShares(finite, shareSums, shareSquares);
    }
}
