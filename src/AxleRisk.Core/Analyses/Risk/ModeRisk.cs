using System.Collections.Immutable;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>One mode's part of the risk.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="First">The probability that it has failed, and before the others, by each distance of the table.</param>
/// <param name="Without">The probability that one of the other modes has failed by the required distance, this one switched off;
/// NaN where failures are counted.</param>
public sealed record ModeRisk(FailureMode Mode, ImmutableArray<double> First, double Without)
{
    /// <summary>Every mode's part; none where fatigue is the only one.</summary>
    internal static ImmutableArray<ModeRisk> Of(LifeModel model, LifeSummary all, ImmutableArray<DistanceRisk> distances, bool counted)
    {
        if (all.Modes is not { } table || model.Modes.Modes.Length == 1 || all.Evaluations == 0)
        {
            return [];
        }

        LifeCounts[] counts = counted ? [.. table.FirstCounts.Select(lives => new LifeCounts(lives))] : [];
        return
        [
            .. model.Modes.Modes.Select((mode, m) => new ModeRisk(
                mode,
                [.. distances.Select(d => counted ? (double)counts[m].Below(d.DistanceKm) / all.Evaluations
                    : table.Mean(table.First[m], all.Evaluations, d.DistanceKm))],
                counted ? double.NaN : table.Mean(table.Without[m], all.Evaluations, table.RequiredKm))),
        ];
    }
}
