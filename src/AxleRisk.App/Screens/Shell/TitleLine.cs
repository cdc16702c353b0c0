using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The top line: the open file on the left; on the right the failure probability, which follows every edit.</summary>
internal static class TitleLine
{
    /// <summary>The line.</summary>
    /// <param name="edited">The open file; null where there is none.</param>
    /// <param name="session">The scenario in it; null until it is valid.</param>
    /// <param name="width">Characters.</param>
    public static PageLine Of(EditedScenario? edited, Session? session, int width)
    {
        if (edited is null)
        {
            return PageLine.Of($" {Product.Name} {Product.Version}", Ink.Bar).Fit(width, Ink.Bar);
        }

        PageLine answer = session is null || edited.Errors.Count > 0 ? PageLine.Empty : Answer(session);
        int room = Math.Max(0, width - answer.Length);
        string marks = string.Concat(Marks(edited).Select(m => $" ({m})"));
        string file = TextTable.Shorten(Printable.Line(Path.GetFileName(edited.Path)), Math.Max(8, room - 2 - marks.Length));
        return PageLine.Of($" {file}{marks}", Ink.Bar).Fit(room, Ink.Bar).Then(answer).Fit(width, Ink.Bar);
    }

    private static IEnumerable<string> Marks(EditedScenario edited)
    {
        if (edited.File.Holder is not null)
        {
            yield return "only look";
        }

        if (edited.IsUnsaved)
        {
            yield return "not saved";
        }

        if (edited.File.Disk is not DiskState.Same)
        {
            yield return edited.File.Disk == DiskState.Changed ? "file changed" : "file gone";
        }
    }

    private static PageLine Answer(Session session)
    {
        string by = $"  fails by {Figures.Exact(session.Document.Scenario.RequiredKm)} km: ";
        if (session.Risk.Fresh is not { } result)
        {
            string failed = session.Risk.Run.Standing.Phase == RunPhase.Failed ? "no answer" : "...";
            return PageLine.Of(by + failed, Ink.Bar);
        }

        DistanceRisk risk = result.AtRequired;
        string p = Figures.Probability(risk.Probability);
        string range = $" ({Figures.ProbabilityRange(risk.Probability).Replace(" %", "")})";
        return PageLine.Of(new Piece(by, Ink.Bar), new Piece(p, Ink.Chosen), new Piece(range, Ink.Bar));
    }
}
