using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Core.Numerics;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The top line: the open file on the left; on the right the failure probability, which follows every edit.</summary>
internal static class TitleLine
{
    /// <summary>The line.</summary>
    /// <param name="edited">The open file; null where there is none.</param>
    /// <param name="session">The scenario in it; null until it is valid.</param>
    /// <param name="front">The page in front.</param>
    /// <param name="width">Characters.</param>
    public static PageLine Of(EditedScenario? edited, Session? session, Page front, int width)
    {
        if (edited is null)
        {
            return PageLine.Of($" {Product.Name} {Product.Version}", Ink.Bar).Fit(width, Ink.Bar);
        }

        string marks = string.Concat(Marks(edited).Select(m => $" ({m})"));
        string name = Printable.Line(Path.GetFileName(edited.Path));
        PageFigure? figure = session is null || edited.Errors.Count > 0 ? null : front.Figure ?? Change(session) ?? Risk(session);
        PageLine answer = Answer(figure, isShort: false);
        answer = answer.Length + name.Length + marks.Length + 2 > width ? Answer(figure, isShort: true) : answer;
        int room = Math.Max(0, width - answer.Length);
        string file = TextTable.Shorten(name, Math.Max(8, room - 2 - marks.Length));
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

    private static PageLine Answer(PageFigure? figure, bool isShort)
    {
        if (figure is null)
        {
            return PageLine.Empty;
        }

        string of = $"{(isShort ? figure.ShortOf : figure.Of)}{(figure.IsInterim ? " so far" : "")}".Trim();
        return PageLine.Of(
            new Piece(of.Length > 0 ? $"  {of}: " : "  ", Ink.Bar),
            new Piece(figure.Figure, figure.Range.Length > 0 ? Ink.Chosen : Ink.Bar),
            new Piece(figure.Range.Length > 0 ? " " + figure.Range : "", Ink.Bar));
    }

    /// <summary>The failure probability of the scenario.</summary>
    private static PageFigure Risk(Session session)
    {
        string of = $"fails by {Figures.Exact(session.Document.Scenario.RequiredKm)} km";
        if (session.Risk.Fresh is not { } result)
        {
            return new PageFigure(of, session.Risk.Run.Standing.Phase == RunPhase.Failed ? "no answer" : "...");
        }

        Interval p = result.AtRequired.Probability;
        return new PageFigure(session.Baseline is null ? of : "pinned, " + of, Figures.Probability(p), Figures.Range(p),
            session.Risk.Run.IsSnapshot || result.Run.IsPartial)
        { ShortOf = session.Baseline is null ? of : "pinned" };
    }

    /// <summary>The change since a scenario was pinned; null where none is or it is the same.</summary>
    private static PageFigure? Change(Session session)
    {
        if (session.Baseline is not { IsPresent: false } baseline)
        {
            return null;
        }

        string of = $"by {Figures.Exact(session.Document.Scenario.RequiredKm)} km";
        return baseline.Fresh is { Cases: [var before, { Change: { } change } after] } result
            ? new PageFigure(of, ChangeFigures.Of(before.Probability.Estimate, after.Probability.Estimate, change.Difference),
                IsInterim: baseline.Run.IsSnapshot || result.Run.IsPartial)
            { ShortOf = "" }
            : new PageFigure(of, baseline.Run.Standing.Phase == RunPhase.Failed ? "no comparison" : "...");
    }
}
