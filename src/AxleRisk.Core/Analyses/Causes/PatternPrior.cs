using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>How likely the scenario's distributions make each pattern of explanations: factors are drawn, no damage is computed.</summary>
internal static class PatternPrior
{
    /// <summary>The number of draws.</summary>
    public const int Draws = 1 << 17;

    /// <summary>The probability of each pattern.</summary>
    /// <exception cref="StudyException">An explanation never holds, or always.</exception>
    public static double[] Of(LifeModel model, Evidence evidence, ulong seed, RunOptions options)
    {
        var events = new ExplanationEvents(evidence.Explanations, model.Factors.ColumnNames);
        var sobol = SamplingPlan.FromName(ScrambledSobol.PlanName, Draws);
        SamplingPlan plan = model.Factors.ColumnNames.Length <= sobol.Dimensions
            ? sobol : SamplingPlan.FromName(PlainMonteCarlo.PlanName, Draws);
        BlockRun<long[]> run = BlockRunner.Run(
            Draws, StudySettings.BlockSize, options with { Progress = null },
            () => (Workspace: model.CreateWorkspace(StudySettings.BlockSize), Values: model.CreateColumns(StudySettings.BlockSize)),
            (buffers, first, count) =>
            {
                var counts = new long[1 << events.Count];
                model.Draw(plan, seed, "causes/explanations", first, count, buffers.Workspace, buffers.Values);
                for (int row = 0; row < count; row++)
                {
                    counts[events.PatternOf(buffers.Values, row)]++;
                }

                return counts;
            });
        options.Cancellation.ThrowIfCancellationRequested();
        double[] patterns = [.. Enumerable.Range(0, 1 << events.Count).Select(s => run.Blocks.Sum(b => b[s]) / (double)Draws)];
        Reject(patterns, evidence);
        return patterns;
    }

    private static void Reject(double[] patterns, Evidence evidence)
    {
        for (int e = 0; e < evidence.Explanations.Length; e++)
        {
            double p = patterns.Where((_, s) => (s >> e & 1) == 1).Sum();
            if (p is 0 or >= 1)
            {
                throw new StudyException(
                    $"the explanation \"{evidence.Explanations[e].Name}\" {(p == 0 ? "never" : "always")} holds in {Draws:#,0} draws from the scenario's "
                    + "distributions, so evidence can say nothing of it; widen a distribution or change its conditions");
            }
        }
    }
}
