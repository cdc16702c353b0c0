using AxleRisk.App.Text;
using AxleRisk.Core.Outcomes;
using AxleRisk.Reports.Charts;

namespace AxleRisk.App.Answers;

/// <summary>What the charts of all sections share: labels, axes and the words for the run behind them.</summary>
internal static class Charting
{
    /// <summary>Rows that a chart shows; the table beside it has all.</summary>
    public const int MostRows = 16;

    public static ChartAxis Percent(string title, bool isLog = false) => new(title, Figures.Tick, isLog);

    public static ChartAxis Km(bool isLog = false) => new("distance, km", Figures.Km, isLog);

    /// <summary>What a caption says of the run.</summary>
    public static string RunOf(RunRecord run) => $"{Figures.Count(run.Evaluations)} evaluations, seed {run.Seed}.";

    /// <summary>Says so where a chart shows fewer rows than there are.</summary>
    public static string Shown(int rows) => rows > MostRows ? $" The first {MostRows} of {rows} are drawn; the table has all." : "";
}
