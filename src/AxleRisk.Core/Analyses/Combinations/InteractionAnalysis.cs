using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>Second-order and Shapley interaction indices of the event for all pairs of a few players.</summary>
internal static class InteractionAnalysis
{
    /// <summary>Groups of the jackknife.</summary>
    private const int Groups = 32;

    /// <summary>Runs the analysis with about <see cref="StudySettings.Evaluations"/> evaluations, at least two rows a group.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations, seed, sampling plan.</param>
    /// <param name="players">Groups of factors that are independent of one another, the strongest first; the last are left out where there are too few evaluations for all.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <returns>The pairs, the largest Shapley interaction first, the evaluations spent, and whether the run was ended early; then there are no pairs.</returns>
    public static (ImmutableArray<InteractionPair> Pairs, long Evaluations, bool IsPartial) Run(
        LifeModel model, StudySettings settings, ImmutableArray<ImmutableArray<Factor>> players, RunOptions options)
    {
        int PerRow() => new InteractionTally(model, settings, players, SamplingPlan.FromName(settings.Sampling, 1), 1).EvaluationsPerRow;
        while (players.Length > 2 && 2L * Groups * PerRow() > settings.Evaluations)
        {
            players = players.RemoveAt(players.Length - 1);
        }

        if (players.Length < 2)
        {
            return ([], 0, false);
        }

        int perRow = PerRow();
        long rows = Math.Max(2 * Groups, settings.Evaluations / perRow / Groups * Groups);
        int blockSize = (int)Math.Min(StudySettings.BlockSize, rows / Groups);
        var tally = new InteractionTally(model, settings, players, SamplingPlan.FromName(settings.Sampling, rows), blockSize);
        RunOptions scaled = options with { Progress = options.Progress is { } report ? done => report(done * perRow) : null };
        BlockRun<double[]> run = BlockRunner.Run(rows, blockSize, scaled, tally.CreateWorker, tally.Work);
        return (run.IsPartial ? [] : Pairs(tally, run.Blocks), run.Rows * perRow, run.IsPartial);
    }

    private static ImmutableArray<InteractionPair> Pairs(InteractionTally tally, IReadOnlyList<double[]> blocks)
    {
        double[][] groups = Join(blocks);
        IEnumerable<InteractionPair> pairs =
            from i in Enumerable.Range(0, tally.Players.Length)
            from j in Enumerable.Range(i + 1, tally.Players.Length - i - 1)
            select new InteractionPair(
                NameOf(tally.Players[i]), NameOf(tally.Players[j]),
                Jackknife.Estimate(groups, s => InteractionGame.SecondOrder(s.AsSpan(InteractionTally.FirstSet), i, j) / Scale(s)),
                Jackknife.Estimate(groups, s => InteractionGame.Shapley(s.AsSpan(InteractionTally.FirstSet), i, j) / Scale(s)));
        return [.. pairs.OrderByDescending(p => Math.Abs(p.Shapley.Estimate))];
    }

    private static string NameOf(ImmutableArray<Factor> player) => string.Join(" + ", player.Select(f => f.Name));

    /// <summary>Rows times the variance of the event.</summary>
    private static double Scale(double[] s)
    {
        double p = s[InteractionTally.Event] / (2 * s[InteractionTally.Rows]);
        return s[InteractionTally.Rows] * p * (1 - p);
    }

    private static double[][] Join(IReadOnlyList<double[]> blocks)
    {
        double[][] groups = Workspace.Columns(Math.Min(Groups, blocks.Count), blocks[0].Length);
        for (int b = 0; b < blocks.Count; b++)
        {
            double[] group = groups[(int)((long)b * groups.Length / blocks.Count)];
            for (int i = 0; i < group.Length; i++)
            {
                group[i] += blocks[b][i];
            }
        }

        return groups;
    }
}
