using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The page before a scenario is open: the scenarios at hand.</summary>
/// <param name="entries">The files found.</param>
/// <param name="dialogs">Asks for a path.</param>
/// <param name="open">Opens a file; gives what is wrong with it, or nothing.</param>
internal sealed class StartPage(IReadOnlyList<ScenarioEntry> entries, IDialogs dialogs, Func<string, IReadOnlyList<string>> open) : Page
{
    /// <summary>The lines above the list.</summary>
    private const int Above = 2;

    private int chosen;
    private IReadOnlyList<string> errors = [];

    public override string Name => "Open a scenario";

    public override IReadOnlyList<string> Explanation =>
    [
        "AxleRisk answers for a vehicle's rear axle: how likely its housing is to break by fatigue before a given distance, what drives that risk, and which combinations are dangerous.",
        "A scenario is a text file that states the vehicle, the axle, its use and what is not certain about them. This page lists the files ending in .toml here and in the folder scenarios. Every shipped scenario is invented.",
    ];

    public override IReadOnlyList<KeyHint> Keys => entries.Count == 0
        ? [new("p", "open by path")]
        : [new("Enter", "open"), new("p", "open by path")];

    public override int? LineInSight => errors.Count > 0 ? null : Above + (2 * chosen) + 1;

    public override int Revision => HashCode.Combine(chosen, errors);

    public override PageLine Status => PageLine.Of("Scenarios in this folder and in scenarios/", Ink.Quiet);

    public override IReadOnlyList<PageLine> Lines(int width, int height) => errors.Count > 0
        ?
        [
            PageLine.Of("This file cannot be opened:", Ink.Warning), PageLine.Empty,
            .. errors.SelectMany(e => Wrap.Lines(Printable.Line(e), width - 4, "    ")).Select(l => PageLine.Of("  " + l)),
            PageLine.Empty, PageLine.Of("Press any key to go back to the list."),
        ]
        : entries.Count == 0
        ?
        [
            PageLine.Empty, PageLine.Of("  There is no scenario (*.toml) here or in a folder scenarios."),
            PageLine.Of("  Press p to open one by its path."),
        ]
        : [PageLine.Of("Choose a scenario to open", Ink.Heading), PageLine.Empty,
            .. entries.SelectMany((e, i) => Rows(e, i == chosen, width))];

    public override bool Press(PageKey key)
    {
        if (errors.Count > 0)
        {
            errors = [];
            return true;
        }

        switch (key.Name)
        {
            case KeyName.Up or KeyName.Down or KeyName.Home or KeyName.End:
                chosen = key.Name switch
                {
                    KeyName.Up => Math.Max(0, chosen - 1),
                    KeyName.Down => Math.Max(0, Math.Min(entries.Count - 1, chosen + 1)),
                    KeyName.Home => 0,
                    _ => Math.Max(0, entries.Count - 1),
                };
                return true;
            case KeyName.Enter when entries.Count > 0:
                errors = open(entries[chosen].Path);
                return true;
            case KeyName.Character when key.Character == 'p':
                if (dialogs.Ask("Open", "Path of the scenario file:", "", t => File.Exists(t) ? null : "there is no such file") is { } path)
                {
                    errors = open(path);
                }

                return true;
            default:
                return false;
        }
    }

    public override bool Click(int line, int column)
    {
        int row = (line - Above) / 2;
        if (errors.Count > 0 || line < Above || row >= entries.Count)
        {
            return false;
        }

        // A second click on the chosen row opens it.
        bool again = row == chosen;
        chosen = row;
        return !again || Press(KeyName.Enter);
    }

    private static IEnumerable<PageLine> Rows(ScenarioEntry entry, bool isChosen, int width)
    {
        string path = TextTable.Shorten((isChosen ? "> " : "  ") + Printable.Line(entry.Path), width);
        yield return PageLine.Of(path, isChosen ? Ink.Chosen : Ink.Plain).Fit(width, isChosen ? Ink.Chosen : Ink.Plain);
        string title = "    " + Printable.Line(entry.Title ?? $"not valid: {entry.Error}");
        yield return PageLine.Of(TextTable.Shorten(title, width), entry.Title is null ? Ink.Warning : Ink.Quiet);
    }
}
