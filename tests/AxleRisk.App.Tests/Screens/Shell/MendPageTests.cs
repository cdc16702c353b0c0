using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Tests.Commands;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Shell;

public sealed class MendPageTests
{
    [Fact]
    public void Errors_are_mended_one_by_one_at_their_lines_and_then_the_console_goes_on()
    {
        string path = Cli.Temporary(Good.Text.Replace("\nwall_mm = 6", "\n  wall_mm = -6").Replace("share = 0.75", "share = 0.5"));
        var answers = new Answers();
        using ConsoleState state = Open(path, answers);
        string screen = Screen(state);
        Assert.Contains("2 errors.", screen, StringComparison.Ordinal);
        Assert.Contains(">  14   wall_mm = -6", screen, StringComparison.Ordinal);
        Assert.Null(state.Session);

        answers.Next = "wall_mm = 6";
        state.Press(KeyName.Enter);
        Assert.Equal("wall_mm = -6", answers.Initial);
        Assert.Contains("\n  wall_mm = 6\n", state.Edited!.Text, StringComparison.Ordinal);
        Assert.Contains("One error is left.", Screen(state), StringComparison.Ordinal);
        state.Press(KeyName.Undo);
        Assert.Equal(2, state.Edited.Errors.Count);
        state.Press(KeyName.Redo);

        // The shares are wrong together: the reader names the first leg, whose share stands two lines below.
        answers.Next = "share = 0.75";
        state.Press(KeyName.Right);
        state.Press(KeyName.Right);
        state.Press(KeyName.Enter);
        Assert.Equal("share = 0.5", answers.Initial);
        Assert.NotNull(state.Session);
        Assert.IsType<RiskPage>(state.Front);
        Assert.NotEqual(state.Edited.File.Text, state.Edited.Text); // nothing is written before it is saved

        // Back to the errors and to the answers again.
        state.Press(KeyName.Undo);
        Assert.IsType<MendPage>(state.Front);
        state.Press('4');
        Assert.IsType<MendPage>(state.Front);
        state.Press(KeyName.Redo);
        Assert.IsType<RiskPage>(state.Front);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# only a comment\n")]
    public void An_empty_file_is_filled_with_starting_values(string text)
    {
        using ConsoleState state = Open(Cli.Temporary(text), new Answers());
        Assert.Contains("t starting values", Screen(state), StringComparison.Ordinal);
        state.Press('t');
        Assert.NotNull(state.Session);
        state.Press(KeyName.Undo);
        Assert.Equal(text, state.Edited!.Text);
    }

    [Fact]
    public void A_missing_line_is_added_and_a_wrong_one_taken_out()
    {
        var answers = new Answers();
        using ConsoleState state = Open(Cli.Temporary(Good.With("required_km = 50000", "nonsense = 1")), answers);
        Assert.Equal(2, state.Edited!.Errors.Count);
        Assert.Contains("Enter add the line", Screen(state), StringComparison.Ordinal);
        answers.Next = "required_km = 50000";
        state.Press(KeyName.Enter);
        Assert.Equal("required_km = ", answers.Initial);
        Assert.Contains("nonsense", state.Edited.Errors.Single().Message, StringComparison.Ordinal);
        state.Press(KeyName.Delete);
        Assert.DoesNotContain("nonsense", state.Edited.Text, StringComparison.Ordinal);
        Assert.NotNull(state.Session);
    }

    [Fact]
    public void An_error_in_a_data_file_is_told_and_read_again()
    {
        string path = Cli.Temporary(Good.With("wall_mm = 6", """wall_mm = { distribution = "sample", file = "walls.csv", column = "wall_mm" }"""));
        string data = Path.Combine(Path.GetDirectoryName(path)!, "walls.csv");
        File.WriteAllText(data, "wall_mm\n5.9\nx\n");
        using ConsoleState state = Open(path, new Answers());
        Assert.Contains("walls.csv", Screen(state), StringComparison.Ordinal);
        state.Press(KeyName.Enter);
        File.WriteAllText(data, "wall_mm\n5.9\n6.1\n");
        state.Press('r');
        Assert.NotNull(state.Session);
    }

    [Theory]
    [InlineData(20, 5)]
    [InlineData(80, 24)]
    public void It_fills_the_window_and_changes_nothing_of_what_another_console_has(int width, int height)
    {
        string text = Good.With("wall_mm = 6", "wall_mm = -6");
        string path = Cli.Temporary(text);
        File.WriteAllText(path + ".open", "process 1\nstart 1\nhost faraway\nplace 00000000\n");
        using ConsoleState state = Open(path, new Answers { Next = "wall_mm = 6" });
        foreach (PageKey key in new PageKey[] { KeyName.Enter, KeyName.Delete, 'n', 't', KeyName.Left, KeyName.Down, 'r', '?', 'x' })
        {
            state.Press(key);
            IReadOnlyList<PageLine> lines = state.Lines(width, height);
            Assert.Equal(height, lines.Count);
            Assert.All(lines, line => Assert.Equal(width, line.Length));
        }

        Assert.Equal(text, state.Edited!.Text);
    }

    private static ConsoleState Open(string path, IDialogs dialogs)
    {
        var state = new ConsoleState(dialogs, TimeProvider.System, () => []) { RiskEvaluations = HeadlessConsole.FewEvaluations };
        state.Show(EditedScenario.Open(path));
        return state;
    }

    private static string Screen(ConsoleState state) => string.Join('\n', state.Lines(80, 24).Select(l => l.Text));

    /// <summary>Answers with the next text.</summary>
    private sealed class Answers : IDialogs
    {
        public string? Next { get; set; }

        public string Initial { get; private set; } = "";

        public string? Ask(string title, string question, string initial, Func<string, string?> refusal)
        {
            Initial = initial;
            return Next;
        }

        public bool Fill(AxleRisk.App.Screens.Forms.Form form) => false;

        public int? Choose(string title, string question, params string[] answers) => null;
    }
}
