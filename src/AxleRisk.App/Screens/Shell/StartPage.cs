using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The page before a scenario is open: the scenarios at hand, a new one, and those inside the program to copy.</summary>
/// <param name="entries">The files found.</param>
/// <param name="dialogs">Asks for a path.</param>
/// <param name="open">Opens a file; gives what is wrong with it, or nothing.</param>
/// <param name="create">Opens a new scenario by its path and text.</param>
internal sealed class StartPage(
    IReadOnlyList<ScenarioEntry> entries, IDialogs dialogs, Func<string, IReadOnlyList<string>> open, Action<string, string> create) : Page
{
    /// <summary>The lines above the list.</summary>
    private const int Above = 2;

    private const string NewName = "scenario.toml";

    private readonly IReadOnlyList<ShippedScenario> shipped = ShippedScenario.All;
    private int chosen;
    private IReadOnlyList<string> errors = [];

    public override string Name => "Open a scenario";

    public override IReadOnlyList<string> Explanation =>
    [
        "AxleRisk answers for a vehicle's rear axle: how likely its housing is to break by fatigue before a given distance, what drives that risk, and which combinations are dangerous.",
        "A scenario is a text file that states the vehicle, the axle, its use and what is not certain about them. This page lists the files ending in .toml here and in the folder scenarios; Enter opens the chosen one, p another by its path.",
        "n asks a few questions and makes a new scenario of the answers; every number it begins with is invented and marked in the file as a starting value. Below are the scenarios that come with the program, invented too: Enter opens a copy under a name that you give. Nothing but its data files, where it has any, is written before you save it (Ctrl+S).",
    ];

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new("Enter", IsFile ? "open" : IsNew ? "answer a few questions" : "open a copy", KeyWorth.Main), new("n", "new"), new("p", "open by path"),
    ];

    public override int? LineInSight => errors.Count > 0 ? null : Above + (2 * chosen) + 1;

    public override int Revision => HashCode.Combine(chosen, errors);

    public override PageLine Status => PageLine.Of(entries.Count == 0
        ? "No scenario (*.toml) is here or in scenarios/: begin a new one, or a copy" : "Scenarios in this folder and in scenarios/", Ink.Quiet);

    /// <summary>The rows: the files, the new one, those to copy.</summary>
    private int Count => entries.Count + 1 + shipped.Count;

    private bool IsFile => chosen < entries.Count;

    private bool IsNew => chosen == entries.Count;

    public override IReadOnlyList<PageLine> Lines(int width, int height) => errors.Count > 0
        ?
        [
            PageLine.Of("This file cannot be opened:", Ink.Warning), PageLine.Empty,
            .. errors.SelectMany(e => Wrap.Lines(Printable.Line(e), width - 4, "    ")).Select(l => PageLine.Of("  " + l)),
            PageLine.Empty, PageLine.Of("Press any key to go back to the list."),
        ]
        : [PageLine.Of(entries.Count == 0 ? "Begin" : "Choose a scenario to open", Ink.Heading), PageLine.Empty,
            .. entries.SelectMany((e, i) => Rows(e.Path, e.Title ?? $"not valid: {e.Error}", i, width, e.Title is null)),
            .. Rows("new scenario", "A few questions make it; every number it begins with is marked to be replaced", entries.Count, width),
            .. shipped.SelectMany((s, i) => Rows($"copy of {s.Name}", s.Title, entries.Count + 1 + i, width))];

    /// <summary>Asks the questions for a new scenario and opens it.</summary>
    /// <param name="path">The name of its file to begin with.</param>
    public void Create(string? path = null)
    {
        var form = new NewScenarioForm(path ?? NewFile.Free(NewName));
        if (dialogs.Fill(form))
        {
            create(form.Path, NewScenario.Text(form.Answers));
        }
    }

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
                    KeyName.Down => Math.Max(0, Math.Min(Count - 1, chosen + 1)),
                    KeyName.Home => 0,
                    _ => Count - 1,
                };
                return true;
            case KeyName.Enter when IsFile:
                errors = open(entries[chosen].Path);
                return true;
            case KeyName.Enter when !IsNew:
                Copy(shipped[chosen - entries.Count - 1]);
                return true;
            case KeyName.Enter:
            case KeyName.Character when key.Character == 'n':
                Create();
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
        if (errors.Count > 0 || line < Above || row >= Count)
        {
            return false;
        }

        // A second click on the chosen row opens it.
        bool again = row == chosen;
        chosen = row;
        return !again || Press(KeyName.Enter);
    }

    private void Copy(ShippedScenario scenario)
    {
        string data = scenario.Data.Count == 0 ? "" : $", its {scenario.Data.Count} data files beside it at once";
        if (dialogs.Ask("Copy", $"Name of the copy of {scenario.Name}; it is written when you save it (Ctrl+S){data}:",
            NewFile.Free(scenario.Name), t => t.Length == 0 ? "a name for the file" : NewFile.WhyNot(t) ?? scenario.WhyNot(t)) is not { } path)
        {
            return;
        }

        try
        {
            scenario.WriteData(path);
            create(path, scenario.Text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            errors = [e.Message];
        }
    }

    private IEnumerable<PageLine> Rows(string name, string title, int place, int width, bool isWrong = false)
    {
        Ink ink = place == chosen ? Ink.Chosen : Ink.Plain;
        string path = TextTable.Shorten((place == chosen ? "> " : "  ") + Printable.Line(name), width);
        yield return PageLine.Of(path, ink).Fit(width, ink);
        yield return PageLine.Of(TextTable.Shorten("    " + Printable.Line(title), width), isWrong ? Ink.Warning : Ink.Quiet);
    }
}
