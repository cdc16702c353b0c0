using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Tables;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Files;

namespace AxleRisk.App.Screens.Shell;

/// <summary>
/// The whole console as a plain state: the open scenario, the page in front, what every key does and what every line shows.
/// The window only draws its lines and hands it keys and clicks.
/// </summary>
internal sealed class ConsoleState : IDisposable
{
    /// <summary>Lines of the frame above the page: title, tabs, status.</summary>
    private const int Above = 3;

    /// <summary>In a narrower window lines are cut at their ends, and it says so.</summary>
    private const int LeastWidth = 80;

    private readonly IDialogs dialogs;
    private readonly TimeProvider clock;
    private readonly Func<IReadOnlyList<ScenarioEntry>> find;
    private readonly Dictionary<Page, Scroll> scrolls = [];
    private readonly Scroll helpScroll = new();
    private readonly Keeper keeper;
    private MendPage? mend;
    private TablesPage? tables;
    private int height = 24;
    private int width = 80;
    private int presses;
    private string notice = "";

    /// <summary>Creates the console with the list of scenarios in front.</summary>
    /// <param name="dialogs">Windows of their own.</param>
    /// <param name="clock">The clock, for elapsed times only.</param>
    /// <param name="find">Finds the scenarios to list.</param>
    public ConsoleState(IDialogs dialogs, TimeProvider clock, Func<IReadOnlyList<ScenarioEntry>> find)
    {
        this.dialogs = dialogs;
        this.clock = clock;
        this.find = find;
        keeper = new Keeper(clock);
        Front = Start();
    }

    /// <summary>Evaluations of the risk study that follows every edit.</summary>
    public long RiskEvaluations { get; init; } = RiskAnalysis.DefaultEvaluations;

    /// <summary>The open file; null on the start page.</summary>
    public EditedScenario? Edited { get; private set; }

    /// <summary>The scenario in it; null until it is valid.</summary>
    public Session? Session { get; private set; }

    /// <summary>The pages with a key.</summary>
    public IReadOnlyList<Page> Pages { get; private set; } = [];

    /// <summary>The page in front.</summary>
    public Page Front { get; private set; }

    /// <summary>Whether the explanation of the page is shown in its place.</summary>
    public bool IsExplaining { get; private set; }

    /// <summary>Whether the reader wants to leave.</summary>
    public bool HasQuit { get; private set; }

    /// <summary>Changes whenever the window would show something else.</summary>
    public int Revision => HashCode.Combine(
        presses, Front.Revision, Session?.Risk.Run.Revision, Edited?.Edition, Session?.Baseline?.Run.Revision);

    /// <summary>Changes with every answer of a study and its end: these are drawn at once, progress as often as can be followed.</summary>
    public int News => HashCode.Combine(Front.News, Session?.Risk.Run.News, Session?.Baseline?.Run.News);

    /// <summary>Called, on any thread, when there is news.</summary>
    public Action Wake { get; init; } = () => { };

    private int PageHeight => Math.Max(1, height - Above - 1);

    /// <summary>Opens a scenario in place of the one that is open; one that is not valid is mended first.</summary>
    public void Show(EditedScenario scenario)
    {
        Close();
        Edited = scenario;
        scenario.File.Claim();
        keeper.Begin(scenario);
        Settle();
    }

    /// <summary>Asks the questions for a new scenario; once the window can ask.</summary>
    /// <param name="path">The name of its file to begin with.</param>
    public void AskForNew(string path)
    {
        (Front as StartPage)?.Create(path);
        Settle();
    }

    /// <summary>Tells of another console, or offers what an earlier session left behind; once the window can ask.</summary>
    public void AskOnOpening()
    {
        if (Edited is { } open)
        {
            notice = Opening.Ask(open, dialogs);
            Settle();
        }
    }

    /// <summary>
    /// Keeps changes not saved beside the file, a while after the last of them, and watches the file; called in every turn of the
    /// loop.
    /// </summary>
    public void Keep(bool atOnce = false)
    {
        if (Edited is { } open && !HasQuit && keeper.Keep(open, atOnce) is { } news)
        {
            notice = news;
            presses++;
        }
    }

    /// <summary>Answers a key.</summary>
    public void Press(PageKey key)
    {
        presses++;
        notice = "";
        if (IsExplaining)
        {
            IsExplaining = helpScroll.Press(key, PageHeight);
        }
        else if (!Front.Press(key) && !PressFrame(key))
        {
            scrolls[Front].Press(key, PageHeight);
        }

        Settle();
    }

    /// <summary>Answers a click at a place of the window.</summary>
    public void Click(int x, int y)
    {
        presses++;
        if (y == 1 && TabLine.At(Pages, width, Front, x) is { } tab)
        {
            GoTo(Pages[tab]);
        }
        else if (y >= Above && y < height - 1 && !IsExplaining)
        {
            Front.Click(y - Above + scrolls[Front].Top, x);
        }

        Settle();
    }

    /// <summary>Scrolls by the mouse wheel.</summary>
    public void Wheel(int lines)
    {
        presses++;
        if (IsExplaining)
        {
            helpScroll.By(lines);
        }
        else if (Front.LineInSight is not null)
        {
            Front.Press(lines > 0 ? KeyName.Down : KeyName.Up);
        }
        else if (!Front.Wheel(lines))
        {
            scrolls[Front].By(lines);
        }
    }

    /// <summary>The lines of a window of this size, each exactly as long as it is wide.</summary>
    public IReadOnlyList<PageLine> Lines(int newWidth, int newHeight)
    {
        (width, height) = (newWidth, newHeight);
        Scroll scroll = IsExplaining ? helpScroll : scrolls[Front];
        IReadOnlyList<PageLine> page = IsExplaining ? HelpText.Of(Front, width) : Front.Lines(width, PageHeight);
        scroll.Keep(page.Count, PageHeight, IsExplaining ? null : Front.LineInSight);
        return
        [
            TitleLine.Of(Edited, Session, Front, width),
            Pages.Count == 0 || Front is MendPage
                ? PageLine.Of(" " + Front.Name, Ink.Bar).Fit(width, Ink.Bar) : TabLine.Line(Pages, Front, width),
            StatusLine(scroll, page.Count),
            .. Enumerable.Range(scroll.Top, PageHeight).Select(i => (i < page.Count ? page[i] : PageLine.Empty).Fit(width)),
            KeyLine.Of(IsExplaining ? [new("any key", "back"), new("arrows", "scroll")] : [.. Front.Keys,
                .. FrameKeys.Of(Edited, Front is MendPage ? 0 : Pages.Count)], width),
        ];
    }

    /// <inheritdoc/>
    public void Dispose() => Close();

    private PageLine StatusLine(Scroll scroll, int lines)
    {
        PageLine status = notice.Length > 0 ? PageLine.Of(notice, Ink.Strong)
            : IsExplaining ? PageLine.Of("What this page tells", Ink.Quiet) : Front.Status;
        string place = width < LeastWidth ? $" cut: {width} of {LeastWidth} wide" : "";
        if (lines > PageHeight)
        {
            place = $"{place} {scroll.Top + 1}-{Math.Min(lines, scroll.Top + PageHeight)} of {lines}";
        }

        int room = width - place.Length;
        status = status.Length > room ? status.Fit(room - 3).Then(PageLine.Of(".. ", Ink.Quiet)) : status;
        return status.Fit(room).Then(PageLine.Of(place, Ink.Quiet)).Fit(width);
    }

    private bool PressFrame(PageKey key)
    {
        if (key.Name == KeyName.Character && PageBook.Keys.IndexOf(key.Character) is >= 0 and var place && place < Pages.Count)
        {
            GoTo(Pages[place]);
            return true;
        }

        switch (FrameKeys.Named(key))
        {
            case KeyName.Help:
                IsExplaining = true;
                return true;
            case KeyName.Open when Edited is not null && MayLeave():
                Close();
                Front = Start();
                return true;
            case KeyName.Quit:
                HasQuit = MayLeave();
                return true;
            case KeyName.Save when Edited is { } open:
                notice = Saving.Save(open, dialogs).Notice;
                return true;
            case KeyName.SaveAs when Edited is { } open:
                notice = Saving.SaveAs(open, dialogs).Notice;
                return true;
            case KeyName.Compare when Edited is { } open:
                notice = Differences.Ask(open, dialogs);
                return true;
            case KeyName.Pin when Session is { } open && Front is not MendPage:
                notice = open.Pin() ? "Pinned: the top line tells each change against this. b lets go." : "No longer pinned.";
                return true;
            case KeyName.Tables when Session is { } open && Front is not (MendPage or TablesPage):
                tables ??= new TablesPage(open, dialogs);
                tables.OpenFrom(Front);
                GoTo(tables);
                return true;
            case KeyName.Escape when Front is TablesPage { Before: { } before }:
                GoTo(before);
                return true;
            case KeyName.Plain:
                Characters.ArePlain = !Characters.ArePlain;
                notice = Characters.ArePlain ? "Plain characters; # shows all again." : "All characters; # shows plain ones.";
                return true;
            case KeyName.Undo when Edited is { } open:
                notice = open.Undo() is { } undone ? $"Taken back: {LabelOf(undone)}" : "There is nothing to take back.";
                return true;
            case KeyName.Redo when Edited is { } open:
                notice = open.Redo() is { } redone ? $"Done again: {LabelOf(redone)}" : "There is nothing to do again.";
                return true;
            default:
                return false;
        }
    }

    private string LabelOf(string name) => Session?.Document.Scenario.LabelOf(name) ?? name;

    /// <summary>Goes on with the text as it now is: with its pages where it is a scenario, with its errors where it is none.</summary>
    private void Settle()
    {
        if (Edited is not { } open)
        {
            return;
        }

        Session?.Follow();
        if (open.Errors.Count > 0)
        {
            if (Front != mend || mend is null)
            {
                GoTo(mend ??= new MendPage(open, dialogs));
            }
        }
        else if (Session is null)
        {
            Session = new Session(open, clock, RiskEvaluations, Wake);
            Pages = PageBook.Of(Session, dialogs);
            GoTo(Pages.OfType<RiskPage>().Single());
        }
        else if (Front is MendPage)
        {
            GoTo(Pages.OfType<RiskPage>().Single());
        }
    }

    private void GoTo(Page page)
    {
        IsExplaining = false;
        Front = page;
        scrolls.TryAdd(page, new Scroll());
        page.Enter();
    }

    private StartPage Start()
    {
        var page = new StartPage(find(), dialogs, Open, Create);
        scrolls[page] = new Scroll();
        return page;
    }

    private IReadOnlyList<string> Open(string path)
    {
        try
        {
            Show(EditedScenario.Open(path));
            AskOnOpening();
            return [];
        }
        catch (ScenarioException e)
        {
            return [.. e.Errors.Select(error => error.ToString())];
        }
    }

    private void Create(string path, string text)
    {
        Show(EditedScenario.New(path, text));
        AskOnOpening();
        notice = notice.Length > 0 ? notice : $"Not saved yet: Ctrl+S writes {path}.";
    }

    private bool MayLeave()
    {
        (bool may, notice) = Saving.BeforeLeaving(Edited, dialogs);
        return may;
    }

    private void Close()
    {
        foreach (IDisposable page in Pages.OfType<IDisposable>())
        {
            page.Dispose();
        }

        Session?.Dispose();
        Edited?.File.Release();
        (Session, Edited, mend, tables) = (null, null, null, null);
        Pages = [];
        scrolls.Clear();
    }
}
