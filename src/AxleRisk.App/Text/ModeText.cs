using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>The modes of failure as text.</summary>
internal static class ModeText
{
    /// <summary>The share that each mode fails first, over distance.</summary>
    public static TextTable FirstTable(RiskResult result)
    {
        var table = new TextTable([">distance km", .. result.Modes.Select(m => m.Mode.Words)]);
        for (int i = 0; i < result.Distances.Length; i++)
        {
            table.Add([Figures.Exact(result.Distances[i].DistanceKm),
                .. result.Modes.Select(m => Figures.Probability(m.First[i]))]);
        }

        return table;
    }

    /// <summary>Which mode fails first by the required distance, in a sentence; null where fatigue is the only one.</summary>
    public static string? Sentence(RiskResult result)
    {
        int at = result.Distances.ToList().FindIndex(d => d.DistanceKm == result.RequiredKm);
        ModeRisk[] ranked = [.. result.Modes.Where(m => at >= 0 && m.First[at] >= 0).OrderByDescending(m => m.First[at])];
        return ranked.Length < 2 ? null
            : $"By {Figures.Exact(result.RequiredKm)} km {ranked[0].Mode.Words} comes first most often: "
                + string.Join(", ", ranked.Select(m => $"{m.Mode.Words} in {Figures.Probability(m.First[at])}")) + " of all vehicles.";
    }

    /// <summary>Whose damage by leg is told of.</summary>
    public const string ByLeg = "Where damage is told by leg, it is that of the axle's first section.";

    public const string FoundHeading = "What had failed, given the evidence";

    /// <summary>A checked section in words.</summary>
    public static string SectionName(string name) => name == CheckedSection.First ? "the axle's first section" : Printable.Line(name);

    /// <summary>How likely each mode is to have failed as the axle has.</summary>
    public static TextTable FoundTable(CausesResult result)
    {
        var table = new TextTable("mode", "probability", "95 % interval");
        foreach (ModeFound mode in result.Modes)
        {
            table.Add(mode.Mode.Words, Figures.Share(mode.Posterior.Estimate),
                $"{Figures.Share(mode.Posterior.Low).Replace(" %", "")} to {Figures.Share(mode.Posterior.High)}");
        }

        return table;
    }

    /// <summary>How to read that table.</summary>
    public static string FoundReading(CausesResult result) => result.Evidence.CrackedAt is { } cracked
        ? $"The evidence states that {SectionName(cracked)} was found cracked, and nothing else."
        : result.IsConditional ? "Several may have failed within the distances of the evidence, so the probabilities may add up to more than all."
        : "The mode that fails first, as counted.";

    /// <summary>What failure means, in a sentence.</summary>
    public static string Failure(RiskResult result) => result.Modes.IsEmpty
        ? "Failure means that the housing has begun to crack through."
        : $"Failure means the first of: {string.Join(", ", result.Modes.Select(m => m.Mode.Words))}; by fatigue the housing has begun to crack through.";

    /// <summary>The failure probability with one mode switched off.</summary>
    public static TextTable WithoutTable(RiskResult result)
    {
        var table = new TextTable("switched off", "failed by the required distance");
        foreach (ModeRisk mode in result.Modes.Where(m => !double.IsNaN(m.Without)))
        {
            table.Add(mode.Mode.Words, Figures.Probability(mode.Without));
        }

        return table;
    }

    /// <summary>Each mode's part in the failures of a ranking.</summary>
    public static TextTable Table(RankResult result)
    {
        var table = new TextTable("mode", "fails first", "95 % interval", "without it", "95 % interval");
        foreach (ModeOfFailures mode in result.Modes)
        {
            table.Add(mode.Mode.Words, Estimate(mode.First), Range(mode.First), Estimate(mode.Without), Range(mode.Without));
        }

        return table;
    }

    private static string Estimate(Interval interval) =>
        double.IsNaN(interval.Estimate) ? Figures.None : Figures.Probability(interval.Estimate);

    private static string Range(Interval interval) => double.IsNaN(interval.Estimate) ? Figures.None : Figures.ProbabilityRange(interval);
}
