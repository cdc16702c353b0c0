using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The top line: the open file on the left; on the right the failure probability, which follows every edit.</summary>
internal static class TitleLine
{
    public static PageLine Of(Session? session, int width)
    {
        if (session is null)
        {
            return PageLine.Of($" {Product.Name} {Product.Version}", Ink.Bar).Fit(width, Ink.Bar);
        }

        PageLine answer = Answer(session);
        int room = Math.Max(0, width - answer.Length);
        string file = " " + Printable.Line(Path.GetFileName(session.Document.FileName)) + (session.Edited.IsUnsaved ? " (not saved)" : "");
        return PageLine.Of(TextTable.Shorten(file, Math.Max(8, room - 1)), Ink.Bar).Fit(room, Ink.Bar).Then(answer).Fit(width, Ink.Bar);
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
