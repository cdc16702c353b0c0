using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Tables;
using AxleRisk.App.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The page of a study on a table of its own that a scenario may lack, such as a trip: it is added here by a form.</summary>
/// <param name="session">The open scenario.</param>
/// <param name="dialogs">Shows the form.</param>
/// <param name="study">The study.</param>
/// <param name="name">Its name on the tabs.</param>
internal abstract class PlannedPage<TQuestion, TResult>(
    Session session, IDialogs dialogs, Study<TQuestion, TResult> study, string name)
    : AnswerPage<TQuestion, TResult>(session, dialogs, study, name)
    where TResult : class
{
    private readonly TableWork work = new(session, dialogs);
    private string outcome = "";

    public override IReadOnlyList<KeyHint> Keys => IsMissing ? [new("a", "add", KeyWorth.Main)] : base.Keys;

    public override bool IsAsked => !IsMissing;

    public override PageLine Status => outcome.Length > 0 ? PageLine.Of(outcome, Ink.Warning) : base.Status;

    /// <summary>Whether the scenario has no such table.</summary>
    protected abstract bool IsMissing { get; }

    /// <summary>What the table is, and that it is not there.</summary>
    protected abstract string Missing { get; }

    public override IReadOnlyList<PageLine> Lines(int width, int height) => !IsMissing ? base.Lines(width, height)
        : [.. Paragraph(Missing, width), .. Paragraph("a adds it in a form; t lists all tables of the scenario.", width)];

    public override bool Press(PageKey key)
    {
        outcome = "";
        if (!IsMissing || key.Character != 'a')
        {
            return base.Press(key);
        }

        outcome = work.Add(work.Row(Table)) ?? "";
        return true;
    }
}
