using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Where a study stands, in one line below the tabs.</summary>
internal static class StudyStatus
{
    private const int BarWidth = 16;

    /// <summary>The line.</summary>
    /// <param name="standing">Where the run stands.</param>
    /// <param name="hasResult">Whether there is a result to show.</param>
    /// <param name="isOutOfDate">Whether that result answers an earlier state of the scenario.</param>
    public static PageLine Line(RunStanding standing, bool hasResult, bool isOutOfDate)
    {
        string stale = hasResult && isOutOfDate ? "Figures below are OUT OF DATE. " : "";
        return standing.Phase switch
        {
            RunPhase.Running => PageLine.Of(new Piece(stale, Ink.Warning), new Piece(Bar(standing), Ink.Strong),
                new Piece(" " + Progress(standing, stale.Length > 0))),
            RunPhase.Stopped => PageLine.Of(
                new Piece($"{stale}STOPPED ", Ink.Warning), new Piece(Bar(standing), Ink.Strong),
                new Piece($" {Figures.Count(standing.Evaluations)} of {Figures.Count(standing.Requested)}; s continues")),
            RunPhase.Failed => PageLine.Of($"The study failed: {standing.Failure}", Ink.Warning),
            _ when stale.Length > 0 => PageLine.Of("OUT OF DATE: the scenario was changed after these figures. r runs again.", Ink.Warning),
            RunPhase.Done => PageLine.Of(
                $"Done: {Figures.Count(standing.Evaluations)} evaluations in {standing.Elapsed.TotalSeconds:0.0} s, {Rate(standing)} a second", Ink.Quiet),
            _ => PageLine.Of("Not run yet. r runs it.", Ink.Quiet),
        };
    }

    private static string Bar(RunStanding standing)
    {
        int full = (int)(BarWidth * standing.Share);
        return "[" + new string('#', full) + new string('.', BarWidth - full) + "]";
    }

    private static string Progress(RunStanding standing, bool isShort)
    {
        string share = $"{100 * standing.Share,3:0} %";
        return isShort || double.IsNaN(standing.PerSecond)
            ? share
            : standing.Share == 1 ? $"all {Figures.Count(standing.Evaluations)} evaluations made; the answer is worked out of them"
            : $"{share}  {Figures.Count(standing.Evaluations)} evaluations, {Rate(standing)} a second, {standing.SecondsLeft:0} s left";
    }

    private static string Rate(RunStanding standing) => Figures.Km(standing.PerSecond);
}
