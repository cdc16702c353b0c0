using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>Second-order and Shapley interaction indices of the event for all pairs of a few players.</summary>
internal static class InteractionAnalysis
{
    /// <summary>Runs the analysis with about <see cref="StudySettings.Evaluations"/> evaluations, at least two rows a group.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations, seed, sampling plan.</param>
    /// <param name="players">Groups of factors that are independent of one another, the strongest first; the last are left out
    /// where there are too few evaluations for all.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <returns>The pairs, the largest Shapley interaction first, the evaluations spent, and whether the run was ended early;
    /// then there are no pairs.</returns>
    public static (ImmutableArray<InteractionPair> Pairs, long Evaluations, bool IsPartial) Run(
        LifeModel model, StudySettings settings, ImmutableArray<ImmutableArray<Factor>> players, RunOptions options)
    {
        int PerRow() => InteractionTally.EvaluationsPerRow(model, players);
        while (players.Length > 2 && 2L * PairedDraw.Groups * PerRow() > settings.Evaluations)
        {
            players = players.RemoveAt(players.Length - 1);
        }

        if (players.Length < 2)
        {
            return ([], 0, false);
        }

        int perRow = PerRow();
        var draw = new PairedDraw(model, settings, settings.Evaluations / perRow);
        var tally = new InteractionTally(model, players, draw);
        RunOptions scaled = options with { Progress = options.Progress is { } report ? done => report(done * perRow) : null };
        (double[][] groups, long rows, bool isPartial) = draw.Run(scaled, tally.CreateWorker, tally.Work);
        return (isPartial ? [] : Pairs(tally, groups), rows * perRow, isPartial);
    }

    private static ImmutableArray<InteractionPair> Pairs(InteractionTally tally, double[][] groups)
    {
        IEnumerable<InteractionPair> pairs =
            from i in Enumerable.Range(0, tally.Players.Length)
            from j in Enumerable.Range(i + 1, tally.Players.Length - i - 1)
            select new InteractionPair(
                tally.Players[i], tally.Players[j],
                Jackknife.Estimate(groups, s => InteractionGame.SecondOrder(s.AsSpan(InteractionTally.FirstSet), i, j) / Scale(s)),
                Jackknife.Estimate(groups, s => InteractionGame.Shapley(s.AsSpan(InteractionTally.FirstSet), i, j) / Scale(s)));
        return [.. pairs.OrderByDescending(p => Math.Abs(p.Shapley.Estimate))];
    }

    /// <summary>Rows times the variance of the event.</summary>
    private static double Scale(double[] s)
    {
        double p = s[InteractionTally.Event] / (2 * s[InteractionTally.Rows]);
        return s[InteractionTally.Rows] * p * (1 - p);
    }
}
