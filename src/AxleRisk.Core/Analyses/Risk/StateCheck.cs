using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>Whether the numbers of a state that comes from outside fit together, and fit a scenario.</summary>
public static class StateCheck
{
    /// <summary>Sums of shares are exact to the last unit; each of a million blocks may have lost half of one.</summary>
    private const double Slack = 1e-9;

    /// <summary>What does not fit, as the end of a sentence on the state; null where all does.</summary>
    /// <param name="model">The scenario that the state is said to be of.</param>
    /// <param name="state">The state.</param>
    public static string? Fault(LifeModel model, RiskState state)
    {
        StudySettings settings = state.Settings;
        if (settings.Evaluations < 1 || !SamplingPlan.Names.Contains(settings.Sampling))
        {
            return "names a study that there cannot be";
        }

        var plan = new BlockPlan(settings, 1);
        if (!(state.FirstBlock >= 0 && state.FirstBlock <= state.NextBlock && state.NextBlock <= state.EndBlock
            && state.EndBlock <= plan.Blocks))
        {
            return "names blocks that its study does not have";
        }

        if (state.Replicates.Length != plan.Replicates)
        {
            return $"has {state.Replicates.Length} replicates where its study has {plan.Replicates}";
        }

        LifeSummary shape = RiskTally.NewSummary(model);
        return Enumerable.Range(0, plan.Replicates)
            .Select(r => Fault(state.Replicates[r], plan.RowsBefore(state.NextBlock, r) - plan.RowsBefore(state.FirstBlock, r), shape))
            .FirstOrDefault(fault => fault is not null);
    }

    private static string? Fault(LifeSummary summary, long rows, LifeSummary shape)
    {
        if (summary.LegShareSums.Length != shape.LegShareSums.Length || summary.Modes?.First.Length != shape.Modes?.First.Length
            || summary.Modes?.RequiredKm != shape.Modes?.RequiredKm
            || !(summary.Modes?.BendsKm ?? []).SequenceEqual(shape.Modes?.BendsKm ?? []))
        {
            return "has other legs, modes or distances than its scenario";
        }

        if (summary.Life.Count != rows || summary.Damage.Count != rows || summary.Modes?.FirstCounts.Sum(c => c.Count) is { } first
            && first != rows)
        {
            return $"holds counts that do not add up to its {rows} evaluations";
        }

        bool sharesFit = summary.WithShares >= 0 && summary.WithShares <= rows
            && summary.LegShareSums.Concat(summary.LegShareSquares).All(s => IsWithin(s, summary.WithShares))
            && summary.LegShareSums.Zip(summary.LegShareSquares).All(s => s.Second.Value <= s.First.Value * (1 + Slack) + Slack)
            && Math.Abs(summary.LegShareSums.Sum(s => s.Value) - summary.WithShares) <= Slack * rows;
        return sharesFit && (summary.Modes is not { } modes || modes.Sums().All(t => t.All(s => IsWithin(s, rows))))
            ? null
            : "holds sums that its evaluations cannot give";
    }

    private static bool IsWithin(ExactSum sum, long rows) => sum.Value >= 0 && sum.Value <= rows * (1 + Slack);
}
