using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>A file that is no valid scenario: its errors, each at its line, which is changed here. It is read anew after each.</summary>
/// <param name="edited">The file.</param>
/// <param name="dialogs">Asks for the line.</param>
internal sealed class MendPage(EditedScenario edited, IDialogs dialogs) : Page
{
    /// <summary>Lines of the file shown before and behind that of the chosen error.</summary>
    private const int Around = 2;

    /// <summary>How the reader ends what it says of a key that must be stated.</summary>
    private const string Missing = " is missing";

    private int chosen;
    private int gone;
    private int presses;
    private string outcome = "";
    private int inSight;

    public override string Name => "Errors to mend";

    public override IReadOnlyList<string> Explanation =>
    [
        "The file is no valid scenario yet, so it has no answers. Its errors are listed as the command check lists them, in the order of the file; the lines around the chosen one are shown below it.",
        "Enter changes the line of the chosen error, or adds the one that is missing; n adds a line below it, Del takes it out; left and right go to the lines around it. The whole is read again at once: what is mended leaves the list, and what hid behind it may come. Ctrl+Z takes a change back. When nothing is left, the console goes on with the scenario.",
        "Nothing is written until you save (Ctrl+S), which can be done before all is mended. A data file that is wrong is mended where it is; r then reads all again.",
    ];

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new("Enter", gone != 0 || MissingKey is null ? "change the line" : "add the line", KeyWorth.Main), new("left right", "another line"), new("n", "new line below"), new("Del", "take the line out"), new("r", "read again"),
        .. IsEmpty ? new KeyHint[] { new("t", "starting values", KeyWorth.Main) } : [],
    ];

    public override PageLine Status => outcome.Length > 0 ? PageLine.Of(outcome, Ink.Warning)
        : PageLine.Of(edited.Errors.Count == 1 ? "One error is left." : $"{edited.Errors.Count} errors.", Ink.Quiet);

    public override int? LineInSight => inSight;

    public override int Revision => HashCode.Combine(edited.Edition, presses);

    /// <summary>Whether the file states nothing at all.</summary>
    private bool IsEmpty => edited.Text.Split('\n').All(l => string.IsNullOrWhiteSpace(l) || l.TrimStart().StartsWith('#'));

    private ScenarioError? Chosen => edited.Errors.ElementAtOrDefault(Math.Clamp(chosen, 0, Math.Max(0, edited.Errors.Count - 1)));

    private int LastLine => Math.Max(1, edited.Text.Split('\n').Length);

    /// <summary>The line that is changed: that of the chosen error, the last where it has none, or one near it that was gone to.</summary>
    private int Line => Math.Clamp((Chosen is { Line: > 0 } error ? error.Line : LastLine) + gone, 1, LastLine);

    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        chosen = Math.Clamp(chosen, 0, Math.Max(0, edited.Errors.Count - 1));
        List<PageLine> lines = [];
        for (int i = 0; i < edited.Errors.Count; i++)
        {
            string text = Words(edited.Errors[i]);
            if (i != chosen)
            {
                lines.Add(PageLine.Of(TextTable.Shorten("  " + text, width)));
                continue;
            }

            lines.AddRange(Wrap.Lines("> " + text, width, "  ").Select(l => PageLine.Of(l, Ink.Chosen)));
            lines.AddRange(InFile(edited.Errors[i], width));
            inSight = lines.Count - 1;
        }

        return lines;
    }

    public override bool Press(PageKey key)
    {
        presses++;
        outcome = "";
        switch (key)
        {
            case { Name: KeyName.Up or KeyName.Down or KeyName.Home or KeyName.End }:
                chosen = Math.Clamp(key.Name switch
                {
                    KeyName.Up => chosen - 1,
                    KeyName.Down => chosen + 1,
                    KeyName.Home => 0,
                    _ => edited.Errors.Count - 1,
                }, 0, Math.Max(0, edited.Errors.Count - 1));
                gone = 0;
                return true;
            case { Name: KeyName.Left or KeyName.Right } when IsHere:
                int to = Line + (key.Name == KeyName.Left ? -1 : 1);
                gone += Math.Clamp(to, 1, LastLine) - Line;
                return true;
            case { Name: KeyName.Enter or KeyName.Delete } or { Character: 'n' or 't' } when edited.WhyOnlyLook is { } why:
                outcome = why;
                return true;
            case { Name: KeyName.Enter } when gone == 0 && MissingKey is { } missing:
                Change(Line, $"{missing} = ", (text, line) => LineEdits.Insert(edited.Text, line, text));
                return true;
            case { Name: KeyName.Enter }:
                Change(Line, LineEdits.Line(edited.Text, Line), (text, line) => LineEdits.Replace(edited.Text, line, text));
                return true;
            case { Character: 'n' }:
                Change(Line, "", (text, line) => LineEdits.Insert(edited.Text, line, text));
                return true;
            case { Name: KeyName.Delete } when IsHere:
                edited.Rewrite($"line {Line} out", LineEdits.Remove(edited.Text, Line));
                return true;
            case { Character: 't' } when IsEmpty:
                edited.Rewrite("starting values", NewScenario.Text(StartingPoint.First));
                return true;
            case { Character: 'r' }:
                edited.Recheck();
                return true;
            default:
                return false;
        }
    }

    /// <summary>Whether the chosen error is in this file and not in a data file.</summary>
    private bool IsHere => Chosen is { } error && error.File == edited.Path;

    /// <summary>The key that the chosen error misses, whose line is to be added; null where it is another error.</summary>
    private string? MissingKey => Chosen?.Message is { } message && message.EndsWith(Missing, StringComparison.Ordinal)
        ? message[..^Missing.Length].Split('.')[^1] : null;

    private string Words(ScenarioError error) => Printable.Line(
        error.File != edited.Path ? error.ToString() : error.Line > 0 ? $"line {error.Line}: {error.Message}" : error.Message);

    private void Change(int line, string initial, Func<string, int, string> change)
    {
        if (!IsHere)
        {
            outcome = "That is in a data file: mend it there, then r reads all again.";
        }
        else if (dialogs.Ask($"Line {line}", Chosen!.Message, initial.TrimStart(), _ => null) is { } text)
        {
            string indent = initial[..(initial.Length - initial.TrimStart().Length)];
            edited.Rewrite($"line {line}", change(indent + text, line));
            gone = 0;
        }
    }

    private IEnumerable<PageLine> InFile(ScenarioError error, int width)
    {
        if (error.File != edited.Path || error.Line <= 0)
        {
            yield break;
        }

        int at = Line;
        for (int line = Math.Max(1, at - Around); line <= Math.Min(LastLine, at + Around); line++)
        {
            string number = $"{(line == at ? '>' : ' ')}{line,4} ";
            string text = LineEdits.Line(edited.Text, line);
            text = text[..(text.Length - text.TrimStart().Length)].Replace('\t', ' ') + Printable.Line(text);

            // A long line is shown from where its error is.
            int from = line == error.Line ? Math.Max(0, error.Column - (width / 2)) : 0;
            yield return PageLine.Of(
                new Piece(number, Ink.Quiet), new Piece(TextTable.Shorten(text[Math.Min(from, text.Length)..], width - number.Length),
                    line == at ? Ink.Strong : Ink.Quiet));
            if (line == error.Line && error.Column > 0)
            {
                yield return PageLine.Of(new string(' ', Math.Min(width - 1, number.Length + error.Column - 1 - from)) + "^", Ink.Warning);
            }
        }
    }
}
