using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>All tables of the scenario in a list, opened from any page: each is added, changed, copied, moved or taken out here.</summary>
internal sealed class TablesPage : Page
{
    private const int LabelWidth = 30;

    private readonly Session session;
    private readonly TableWork work;
    private IReadOnlyList<TableRow> rows = [];
    private int readEdition = -1;
    private int chosen;
    private int presses;
    private string outcome = "";

    public TablesPage(Session session, IDialogs dialogs)
    {
        this.session = session;
        work = new TableWork(session, dialogs);
        Read();
    }

    public override string Name => "Tables";

    public override IReadOnlyList<string> Explanation =>
    [
        "Every table of the scenario, those it does not state too: legs, correlations, evidence, explanations, remedies, trip and fleet. What stands in each is told behind it.",
        "Enter changes the chosen one in a form, or adds it where there is none; a adds one more to its list, c a copy; u and d move it up or down in the list; Del takes it out. Ctrl+Z takes each of these back.",
        "In a form the right side tells what the field is, and so does ? (F1). A quantity is typed as a number; F2 states a distribution instead. Keys that exclude each other take each other's place. The shares of the legs make room for each other, so that they add up to 1.",
        "Comments of the file stay where they are; a table that moves takes those directly above it along, one that is taken out takes those inside it.",
    ];

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new("Enter", Chosen is { IsStated: true, List: null } or { Index: not null } ? "change" : "add", KeyWorth.Main),
        .. Chosen.List is not null ? new KeyHint[] { new("a", "one more") } : [],
        .. Chosen.Index is not null ? new KeyHint[] { new("c", "copy"), new("u d", "move") } : [],
        .. Chosen.IsStated ? new KeyHint[] { new("Del", "take out") } : [], new("Esc", "back", KeyWorth.Main),
    ];

    public override PageLine Status => outcome.Length > 0 ? PageLine.Of(outcome, Ink.Warning)
        : PageLine.Of(Shorter(Chosen.Format.Meaning), Ink.Quiet);

    public override int? LineInSight => chosen;

    public override int Revision => HashCode.Combine(session.Edition, presses);

    /// <summary>The page that it was opened from, to go back to.</summary>
    public Page? Before { get; private set; }

    /// <summary>The table that is chosen.</summary>
    public TableRow Chosen => rows[chosen];

    /// <summary>Opens it at a table.</summary>
    /// <param name="before">The page to go back to.</param>
    public void OpenFrom(Page before)
    {
        Before = before;
        Read();
        Choose(before.Table);
    }

    /// <summary>Brings a table to the front.</summary>
    public void Choose(string path)
    {
        var sought = TomlPath.Of(path);
        chosen = Math.Max(0, rows.ToList().FindIndex(r => r.Path.Equals(sought)));
    }

    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        Read();
        string[] labels = TextTable.Shorten([.. rows.Select(r => new string(' ', 2 * r.Depth) + Printable.Line(r.Label))], LabelWidth);
        return [.. rows.Select((r, i) => Line(r, labels[i], i == chosen, width))];
    }

    public override bool Press(PageKey key)
    {
        presses++;
        outcome = "";
        Read();
        switch (key)
        {
            case { Name: KeyName.Up or KeyName.Down or KeyName.PageUp or KeyName.PageDown or KeyName.Home or KeyName.End }:
                chosen = Math.Clamp(key.Name switch
                {
                    KeyName.Up => chosen - 1,
                    KeyName.Down => chosen + 1,
                    KeyName.PageUp => chosen - 10,
                    KeyName.PageDown => chosen + 10,
                    KeyName.Home => 0,
                    _ => rows.Count - 1,
                }, 0, rows.Count - 1);
                return true;
            case { Name: KeyName.Enter }:
                Do(work.Change(Chosen), Chosen.Index is null ? 1 : 0);
                return true;
            case { Character: 'a' }:
                Do(work.Add(Chosen), 1);
                return true;
            case { Character: 'c' }:
                Do(work.Copy(Chosen), 1);
                return true;
            case { Character: 'u' or 'd' }:
                int by = key.Character == 'u' ? -1 : 1;
                TomlPath? to = Chosen.Index is { } index ? Chosen.ListPath.At(Math.Max(0, index + by)) : null;
                if (Do(work.Move(Chosen, by), 0) && to is not null)
                {
                    chosen = Math.Max(0, rows.ToList().FindIndex(r => r.Path.Equals(to)));
                }

                return true;
            case { Name: KeyName.Delete }:
                Do(work.Remove(Chosen), 0);
                return true;
            default:
                return false;
        }
    }

    public override bool Click(int line, int column)
    {
        presses++;
        if (line < 0 || line >= rows.Count)
        {
            return false;
        }

        bool again = line == chosen;
        chosen = line;
        return !again || Press(KeyName.Enter);
    }

    private static PageLine Line(TableRow row, string label, bool isChosen, int width)
    {
        string text = (isChosen ? "> " : "  ") + label.PadRight(LabelWidth) + " ";
        string summary = row.IsStated ? row.Summary : "none";
        Ink ink = isChosen ? Ink.Chosen : row.Index is null ? row.IsStated ? Ink.Heading : Ink.Quiet : Ink.Plain;
        return PageLine.Of(
            new Piece(text, ink), new Piece(TextTable.Begin(summary, Math.Max(8, width - text.Length)),
                isChosen ? Ink.Chosen : row.IsStated ? Ink.Plain : Ink.Quiet)).Fit(width, isChosen ? Ink.Chosen : Ink.Plain);
    }

    private static string Shorter(string meaning) => meaning.TrimEnd('.');

    /// <summary>Tells what came of it, and goes to what was added, where something was.</summary>
    private bool Do(string? refusal, int added)
    {
        outcome = refusal ?? "";
        TableRow before = Chosen;
        int count = rows.Count;
        Read();
        if (refusal is null && added > 0 && rows.Count > count)
        {
            chosen = Math.Max(0, rows.ToList().FindLastIndex(r => r.Index is not null && IsOf(r, before)));
        }

        return refusal is null;
    }

    private static bool IsOf(TableRow row, TableRow before) => before.List is not null
        ? row.ListPath.Equals(before.ListPath) : row.Path.ToString().StartsWith(before.Path + ".", StringComparison.Ordinal);

    private void Read()
    {
        if (readEdition != session.Edition)
        {
            readEdition = session.Edition;
            rows = work.Rows();
            chosen = Math.Clamp(chosen, 0, rows.Count - 1);
        }
    }
}
