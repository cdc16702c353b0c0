using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>Every input of the scenario in groups; the chosen one is explained below and changed with Enter.</summary>
internal sealed class InputsPage : Page, IDisposable
{
    private readonly Session session;
    private readonly IDialogs dialogs;
    private readonly InputEditor editor;
    private readonly Scroll scroll = new();
    private IReadOnlyList<InputGroup> groups = [];
    private InputRow[] rows = [];
    private int readEdition = -1;
    private int chosen;
    private int shownHeight = 10;
    private int presses;
    private string outcome = "";
    private string sought = "";
    private string note = "";
    private string? notedOf;
    private Panel? panel;

    public InputsPage(Session session, IDialogs dialogs)
    {
        this.session = session;
        this.dialogs = dialogs;
        editor = new InputEditor(session, dialogs);
        Read();
    }

    public override string Name => "Inputs";

    public override string ShortName => "In";

    public override IReadOnlyList<string> Explanation => Opened?.Explanation ??
    [
        "Everything the scenario states, and what it leaves to a default. A number is certain; a distribution makes the input a factor of every study. Enter changes the chosen input; the failure probability at the top follows within a moment.",
        "varies: the input differs from vehicle to vehicle (payload, wall thickness). unknown: it is one value, the same for all vehicles, that nobody knows (the error of the stress model). Better data can remove only the second kind.",
        "default: the file does not state this input; what holds instead is shown with its source. Del takes a stated input out again, so that its default holds.",
        "A value that cannot be is refused with the reason, and nothing changes. Comments and everything else in the file stay as they are when it is saved.",
        "/ looks for a part of a name, a key or a value; Enter there again goes on to the next. Left and right go from group to group. n writes a note for the chosen input, such as where its value comes from: it is kept in the file as the comment behind the value.",
        "T states the tolerance of the chosen dimension as its drawing gives it; where none in mm is chosen, that of the wall. t lists all tables: there legs are added, copied, moved and taken out.",
        "m sets the road mix as bars that always sum to 100 %; c shows the rank correlations between factors as a matrix.",
        "w moves the chosen input over a range and shows what becomes of life and failure.",
    ];

    /// <summary>The chosen input moved over a range, while that is open.</summary>
    public SweepPage? Opened { get; private set; }

    public override IReadOnlyList<KeyHint> Keys => Opened is not null ? Opened.Keys : panel is not null ? panel.Keys :
    [
        new("Enter", "change"), .. CanSweep ? new KeyHint[] { new("w", "sweep") } : [], new("m", "road mix"), new("c", "correlations"), new("T", "tolerance", KeyWorth.Spare),
        new("/", "search", KeyWorth.Spare), .. Chosen.IsStated ? new KeyHint[] { new("n", "note", KeyWorth.Spare) } : [],
        new("left right", "groups", KeyWorth.Spare), .. rows[chosen].CanReset ? new KeyHint[]
            { new("Del", "default") } : [],
    ];

    public override PageLine Status => Opened is not null ? Opened.Status : outcome.Length > 0
        ? PageLine.Of(outcome, Ink.Warning)
        : PageLine.Of(panel?.Status ?? $"{session.Document.Scenario.Legs.Length} legs, {session.Model.Factors.Factors.Length} factors",
            Ink.Quiet);

    public override int Revision => HashCode.Combine(session.Edition, presses, Opened?.Revision);

    /// <summary>The input that is chosen.</summary>
    public InputRow Chosen => rows[chosen];

    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        Read();
        return Opened?.Lines(width, height) ?? panel?.Lines(width, height) ?? List(width, height);
    }

    public override bool Press(PageKey key)
    {
        presses++;
        outcome = "";
        Read();
        if (Opened is not null)
        {
            if (key.Name != KeyName.Escape)
            {
                return Opened.Press(key);
            }

            Close();
            return true;
        }

        if (panel is not null)
        {
            PanelAnswer answer = panel.Press(key);
            outcome = answer.Refusal ?? "";
            panel = answer.IsDone ? null : panel;
            return answer.IsKnown;
        }

        switch (key.Name)
        {
            case KeyName.Up or KeyName.Down or KeyName.PageUp or KeyName.PageDown or KeyName.Home or KeyName.End:
                Move(key.Name);
                return true;
            case KeyName.Enter:
                Change();
                return true;
            case KeyName.Delete when Chosen.CanReset || Chosen.Kind == InputKind.Element:
                outcome = string.Join("; ", session.Apply(ScenarioEdit.Remove(Chosen.Path)).Reasons);
                return true;
            case KeyName.Character when key.Character == 'w' && CanSweep:
                Opened = new SweepPage(session, dialogs, Chosen.Name);
                Opened.Start();
                return true;
            case KeyName.Left or KeyName.Right:
                chosen = InputSearch.Group(groups, chosen, key.Name == KeyName.Right ? 1 : -1);
                return true;
            case KeyName.Character when key.Character == '/':
                Search();
                return true;
            case KeyName.Character when key.Character == 'n' && Chosen.IsStated:
                outcome = editor.Note(Chosen) ?? "";
                return true;
            case KeyName.Character when key.Character == 'T':
                outcome = Toleranced is { } row ? editor.Tolerance(row) ?? "" : "This section has no wall; choose a dimension in mm.";
                return true;
            case KeyName.Character when key.Character == 'm':
                panel = new MixPanel(session);
                return true;
            case KeyName.Character when key.Character == 'c':
                panel = new CorrelationPanel(session, editor);
                return true;
            default:
                return false;
        }
    }

    public override bool Click(int line, int column)
    {
        presses++;
        if (Opened is not null || panel is not null || line >= shownHeight)
        {
            return false;
        }

        int? row = InputLines.RowAt(groups, line + scroll.Top);
        bool again = row == chosen;
        chosen = row ?? chosen;
        return again ? Press(KeyName.Enter) : row is not null;
    }

    public override bool Wheel(int lines)
    {
        if (Opened is not null)
        {
            return false;
        }

        presses++;
        chosen = panel is null ? Math.Clamp(chosen + lines, 0, rows.Length - 1) : chosen;
        return true;
    }

    /// <summary>Brings an input to the front by its name.</summary>
    public void Choose(string name) => chosen = Math.Max(0, Array.FindIndex(rows, r => r.Name == name));

    /// <inheritdoc/>
    public void Dispose() => Close();

    private void Search()
    {
        if (dialogs.Ask("Search", "A part of a name, a key or a value:", sought, _ => null) is { Length: > 0 } text)
        {
            sought = text;
            int found = InputSearch.Next(groups, chosen, text);
            (chosen, outcome) = found >= 0 ? (found, "") : (chosen, $"Nothing here with \"{text}\".");
        }
    }

    /// <summary>The dimension whose tolerance is asked for: the chosen one, or the wall.</summary>
    private InputRow? Toleranced => Chosen.Quantity is { Unit: "mm" } ? Chosen
        : Array.Find(rows, r => r.Quantity == Core.Scenarios.Quantities.Wall);

    private bool CanSweep => SweepPage.CanMove(session, Chosen.Name);

    private void Close()
    {
        Opened?.Dispose();
        Opened = null;
    }

    private void Change()
    {
        switch (Chosen.Kind)
        {
            case InputKind.Share:
                panel = new MixPanel(session, session.Document.Scenario.Legs.ToList()
                    .FindIndex(l => Chosen.Name == $"legs.{l.Name}.share"));
                break;
            case InputKind.Element when Chosen.Name.StartsWith("correlations", StringComparison.Ordinal):
                panel = new CorrelationPanel(session, editor);
                break;
            default:
                outcome = editor.Change(Chosen) ?? "";
                break;
        }
    }

    private IReadOnlyList<PageLine> List(int width, int height)
    {
        // Below the list, the chosen input in full; beside each other where there is room for both.
        int below = height >= 14 ? Math.Clamp(height / 3, 5, 12) : Math.Min(4, height / 2);
        shownHeight = Math.Max(1, height - below);
        IReadOnlyList<PageLine> list = InputLines.Of(groups, chosen, width, out int line);
        scroll.Keep(list.Count, shownHeight, line);
        IEnumerable<PageLine> shown = Enumerable.Range(scroll.Top, shownHeight).Select(i => i < list.Count ? list[i] : PageLine.Empty);
        return [.. shown, .. InputDetail.Of(Chosen, NoteOfChosen(), session.Document.Scenario, width, below)];
    }

    /// <summary>The note of the chosen input, looked up once for each.</summary>
    private string NoteOfChosen()
    {
        if (notedOf != Chosen.Name)
        {
            notedOf = Chosen.Name;
            note = Chosen.IsStated ? ScenarioEditor.NoteOf(session.Edited.Text, Chosen.Path) : "";
        }

        return note;
    }

    private void Move(KeyName key)
    {
        int page = Math.Max(1, shownHeight - 3);
        int to = key switch
        {
            KeyName.Up => chosen - 1,
            KeyName.Down => chosen + 1,
            KeyName.PageUp => chosen - page,
            KeyName.PageDown => chosen + page,
            KeyName.Home => 0,
            _ => rows.Length - 1,
        };
        chosen = Math.Clamp(to, 0, rows.Length - 1);
    }

    /// <summary>Reads the inputs anew after an edit; the input chosen stays chosen.</summary>
    private void Read()
    {
        if (readEdition == session.Edition)
        {
            return;
        }

        readEdition = session.Edition;
        notedOf = null;
        string? name = rows.Length > 0 ? Chosen.Name : null;
        groups = [.. InputRows.Of(session.Document.Scenario, session.Edited.Text).Where(g => g.Rows.Count > 0)];
        rows = [.. groups.SelectMany(g => g.Rows)];
        int same = Array.FindIndex(rows, r => r.Name == name);
        chosen = same >= 0 ? same : Math.Min(chosen, rows.Length - 1);
    }
}
