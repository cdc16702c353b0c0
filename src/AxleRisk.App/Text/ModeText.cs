using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>The modes of failure as text.</summary>
internal static class ModeText
{
    /// <summary>Which mode fails first, over distance; nothing where fatigue is the only one.</summary>
    public static IEnumerable<string> Lines(RiskResult result)
    {
        if (result.Modes.IsEmpty)
        {
            return [];
        }

        var table = new TextTable(["distance km", .. result.Modes.Select(m => m.Mode.Words)]);
        for (int i = 0; i < result.Distances.Length; i++)
        {
            table.Add([Figures.Exact(result.Distances[i].DistanceKm).PadLeft(11),
                .. result.Modes.Select(m => Figures.Probability(m.First[i]))]);
        }

        var without = new TextTable("switched off", "failed by the required distance");
        foreach (ModeRisk mode in result.Modes.Where(m => !double.IsNaN(m.Without)))
        {
            without.Add(mode.Mode.Words, Figures.Probability(mode.Without));
        }

        return
        [
            Style.Heading("Which mode fails first"), .. table.Lines(Layout.Width), "",
            .. double.IsNaN(result.Modes[0].Without) ? [] : without.Lines(Layout.Width).Append(""),
        ];
    }

    /// <summary>Each mode's part in the failures of a ranking; nothing where fatigue is the only one.</summary>
    public static IEnumerable<string> Lines(RankResult result)
    {
        if (result.Modes.IsEmpty)
        {
            return [];
        }

        var table = new TextTable("mode", "fails first", "95 % interval", "without it", "95 % interval");
        foreach (ModeOfFailures mode in result.Modes)
        {
            table.Add(mode.Mode.Words, Estimate(mode.First), Range(mode.First), Estimate(mode.Without), Range(mode.Without));
        }

        return [Style.Heading("Modes of failure"), .. table.Lines(Layout.Width), ""];
    }

    private static string Estimate(Interval interval) =>
        double.IsNaN(interval.Estimate) ? Figures.None : Figures.Probability(interval.Estimate);

    private static string Range(Interval interval) => double.IsNaN(interval.Estimate) ? Figures.None : Figures.ProbabilityRange(interval);
}
