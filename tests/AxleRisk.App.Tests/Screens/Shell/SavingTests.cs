using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Tests.Files;
using AxleRisk.App.Tests.Screens.Editing;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Shell;

/// <summary>The questions around saving, opening and a file that others change.</summary>
public sealed class SavingTests : IDisposable
{
    private readonly Scratch scratch = new();
    private readonly Chooser chooser = new();

    [Fact]
    public void Enter_never_destroys_anything()
    {
        // Each question is answered by Enter, which takes the last answer; the files stay as others left them.
        EditedScenario edited = Edited();
        File.WriteAllText(scratch.PathTo(), Good.With("wall_mm = 6", "wall_mm = 5"));
        chooser.Answer = answers => answers.Length - 1;
        Saving.Save(edited, chooser);
        Differences.Ask(edited, chooser);
        Assert.Contains("wall_mm = 5", File.ReadAllText(scratch.PathTo()), StringComparison.Ordinal);
        Assert.Contains("wall_mm = 7", edited.Text, StringComparison.Ordinal);
        Assert.Equal(2, chooser.Asked.Count);
        Assert.All(chooser.Asked, a => Assert.DoesNotContain("over", a[^1], StringComparison.Ordinal));
    }

    [Fact]
    public void What_differs_is_shown_line_by_line()
    {
        EditedScenario edited = Edited();
        File.WriteAllText(scratch.PathTo(), Good.With("wall_mm = 6", "wall_mm = 5"));
        Differences.Ask(edited, chooser);
        Assert.Matches(@"\n- +\d+ wall_mm = 5\n\+ +\d+ wall_mm = 7$", chooser.Question);
    }

    [Theory]
    [InlineData("Write over", "wall_mm = 7", "wall_mm = 7")]
    [InlineData("Read again", "wall_mm = 5", "wall_mm = 5")]
    [InlineData("Keep both", "wall_mm = 5", "wall_mm = 5")]
    [InlineData("Other name", "wall_mm = 5", "wall_mm = 7")]
    public void A_file_changed_by_another_program_is_met_in_four_ways(string answer, string inFile, string here)
    {
        EditedScenario edited = Edited();
        File.WriteAllText(scratch.PathTo(), Good.With("wall_mm = 6", "wall_mm = 5"));
        chooser.Answer = answers => Array.IndexOf(answers, answer);
        chooser.Path = scratch.PathTo("mine.toml");
        Saving.Save(edited, chooser);
        Assert.Contains(inFile, File.ReadAllText(scratch.PathTo()), StringComparison.Ordinal);
        Assert.Contains(here, edited.Text, StringComparison.Ordinal);
        Assert.Equal(answer == "Keep both", File.Exists(scratch.PathTo("a.unsaved-1.toml")));
        Assert.Equal(answer == "Other name", File.Exists(scratch.PathTo("mine.toml")));
        if (answer is "Read again" or "Keep both")
        {
            edited.Undo();
            Assert.Contains("wall_mm = 7", edited.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_change_is_noticed_when_it_happens()
    {
        var clock = new SteppedClock();
        using var state = new ConsoleState(chooser, clock, () => []) { RiskEvaluations = HeadlessConsole.FewEvaluations };
        state.Show(EditedScenario.Open(scratch.PathTo()));
        clock.Step();
        state.Keep();
        Assert.DoesNotContain("file changed", Screen(state), StringComparison.Ordinal);
        File.WriteAllText(scratch.PathTo(), Good.With("wall_mm = 6", "wall_mm = 5.5"));
        clock.Step();
        state.Keep();
        string screen = Screen(state);
        Assert.Contains("a.toml (file changed)", screen, StringComparison.Ordinal);
        Assert.Contains("R shows what differs", screen, StringComparison.Ordinal);

        chooser.Answer = answers => Array.IndexOf(answers, "Read it again");
        state.Press('R');
        Assert.Contains("wall_mm = 5.5", state.Edited!.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("file changed", Screen(state), StringComparison.Ordinal);

        Directory.Delete(Path.GetDirectoryName(scratch.PathTo())!, recursive: true);
        clock.Step();
        state.Keep();
        Assert.Contains("gone with its folder", Screen(state), StringComparison.Ordinal);
        Directory.CreateDirectory(Path.GetDirectoryName(scratch.PathTo())!);
    }

    [Fact]
    public void What_was_kept_and_vanished_is_written_again()
    {
        var clock = new SteppedClock();
        using var state = new ConsoleState(chooser, clock, () => []) { RiskEvaluations = HeadlessConsole.FewEvaluations };
        state.Show(EditedScenario.Open(scratch.PathTo()));
        state.Session!.Apply(Wall(7));
        clock.Step();
        state.Keep();
        File.Delete(scratch.PathTo("a.toml.unsaved"));
        clock.Step();
        state.Keep();
        Assert.Equal(state.Edited!.Text, File.ReadAllText(scratch.PathTo("a.toml.unsaved")));
    }

    [Fact]
    public void A_file_of_another_console_is_only_looked_at_and_its_kept_changes_are_safe()
    {
        File.WriteAllText(scratch.PathTo("a.toml.open"), "process 1\nstart 1\nhost faraway\nplace 00000000\n");
        File.WriteAllText(scratch.PathTo("a.toml.unsaved"), Good.With("wall_mm = 6", "wall_mm = 8"));
        var clock = new SteppedClock();
        using (var state = new ConsoleState(chooser, clock, () => []) { RiskEvaluations = HeadlessConsole.FewEvaluations })
        {
            state.Show(EditedScenario.Open(scratch.PathTo()));
            chooser.Answer = answers => answers.Length - 1;
            state.AskOnOpening();
            Assert.Contains("process 1 on faraway", chooser.Question, StringComparison.Ordinal);
            Assert.Single(chooser.Asked);
            Assert.Contains("(only look)", Screen(state), StringComparison.Ordinal);
            Assert.False(state.Session!.Apply(Wall(7)).IsAccepted);
            clock.Step();
            state.Keep();
            state.Press('q');
            Assert.True(state.HasQuit);
        }

        Assert.Contains("wall_mm = 8", File.ReadAllText(scratch.PathTo("a.toml.unsaved")), StringComparison.Ordinal);
        Assert.True(File.Exists(scratch.PathTo("a.toml.open")));
    }

    [Fact]
    public void When_the_other_console_leaves_this_one_may_change_the_file()
    {
        File.WriteAllText(scratch.PathTo("a.toml.open"), "process 1\nstart 1\nhost faraway\nplace 00000000\n");
        var clock = new SteppedClock();
        using var state = new ConsoleState(chooser, clock, () => []) { RiskEvaluations = HeadlessConsole.FewEvaluations };
        state.Show(EditedScenario.Open(scratch.PathTo()));
        File.Delete(scratch.PathTo("a.toml.open"));
        clock.Step();
        state.Keep();
        Assert.Contains("it can be changed here now", Screen(state), StringComparison.Ordinal);
        Assert.True(state.Session!.Apply(Wall(7)).IsAccepted);

        // Taken over from elsewhere: what was changed here is kept under a name of its own.
        File.WriteAllText(scratch.PathTo("a.toml.open"), "process 1\nstart 1\nhost faraway\nplace 00000000\n");
        clock.Step();
        state.Keep();
        Assert.Contains("nothing can be changed here", Screen(state), StringComparison.Ordinal);
        clock.Step();
        state.Keep();
        Assert.Equal(state.Edited!.Text, File.ReadAllText(scratch.PathTo("a.unsaved-1.toml")));
    }

    public void Dispose() => scratch.Dispose();

    private static ScenarioEdit Wall(double mm) => ScenarioEdit.Set(TomlPath.Of("axle.wall_mm"), TomlValue.Of(mm));

    private static string Screen(ConsoleState state) => string.Join('\n', state.Lines(100, 24).Select(l => l.Text));

    private EditedScenario Edited()
    {
        EditedScenario edited = scratch.Open();
        edited.Apply(Wall(7));
        return edited;
    }

    /// <summary>A clock that goes on when told to.</summary>
    private sealed class SteppedClock : TimeProvider
    {
        private long seconds = 10;

        public override long TimestampFrequency => 1;

        public void Step() => seconds += 10;

        public override long GetTimestamp() => seconds;
    }

    /// <summary>Answers questions and notes what was asked.</summary>
    private sealed class Chooser : IDialogs
    {
        public Func<string[], int?> Answer { get; set; } = _ => null;

        public string? Path { get; set; }

        public string Question { get; private set; } = "";

        public List<string[]> Asked { get; } = [];

        public string? Ask(string title, string question, string initial, Func<string, string?> refusal) =>
            Path is not null && refusal(Path) is null ? Path : null;

        public bool Fill(AxleRisk.App.Screens.Forms.Form form) => false;

        public int? Choose(string title, string question, params string[] answers)
        {
            Question = question;
            Asked.Add(answers);
            return Answer(answers);
        }
    }
}
