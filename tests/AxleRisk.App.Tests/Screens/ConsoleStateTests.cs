using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens;

public sealed class ConsoleStateTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(40, 12)]
    [InlineData(20, 5)]
    public void Every_page_and_its_explanation_fill_the_window_exactly(int width, int height)
    {
        using ConsoleState state = Open();
        foreach (int place in Enumerable.Range(0, state.Pages.Count))
        {
            state.Press(PageBook.Keys[place]);
            AssertFills(state, width, height);
            state.Press('?');
            AssertFills(state, width, height);
            state.Press('x');
        }
    }

    [Fact]
    public void Each_page_is_reached_by_its_key_and_by_a_click_on_its_tab()
    {
        using ConsoleState state = Open();
        state.Lines(80, 24);
        for (int i = 0; i < state.Pages.Count; i++)
        {
            state.Press(PageBook.Keys[i]);
            Assert.Same(state.Pages[i], state.Front);
            state.Press(PageBook.Keys[0]);
            state.Click(TabLine.Tabs(state.Pages, 80, state.Front)[i].Column + 1, 1);
            Assert.Same(state.Pages[i], state.Front);
        }
    }

    [Fact]
    public void The_tabs_of_what_is_asked_fit_80_columns_with_their_names()
    {
        IReadOnlyList<Page> pages = OpenPages();
        Assert.All(TabLine.Tabs(pages, 80, null).Zip(pages), t => Assert.Matches(
            t.Second.IsAsked ? @"^ ?[0-9=dv-] \w" : "^[0-9=dv-] ", t.First.Text));
        Assert.Contains(pages, p => !p.IsAsked);
        Assert.All(TabLine.Tabs(pages, 200, null), t => Assert.Matches(@"^ ?[0-9=dv-] \w", t.Text));
    }

    [Fact]
    public void The_bottom_line_names_only_keys_that_do_something()
    {
        using ConsoleState state = Open();
        Patience.Until(state.Session!.Risk.Run.Completion);
        string keys = Line(state, 23);
        Assert.Contains("r run again", keys, StringComparison.Ordinal);
        Assert.Contains("? explain", keys, StringComparison.Ordinal);
        Assert.DoesNotContain("s stop", keys, StringComparison.Ordinal); // nothing runs
    }

    [Fact]
    public void The_answer_in_the_title_is_that_of_the_risk_command()
    {
        using ConsoleState state = Open();
        Patience.Until(state.Session!.Risk.Run.Completion);
        (_, string output, _) = Cli.Run("risk", Cli.Shipped("warranty-clinic-van"), "-n", $"{HeadlessConsole.FewEvaluations}");
        string printed = output.Split('\n').Single(l => l.StartsWith("Failure probability by", StringComparison.Ordinal)).Split(": ")[1];
        Assert.Contains($": {printed} (", Line(state, 0), StringComparison.Ordinal);
    }

    [Fact]
    public void An_edit_marks_the_results_of_a_page_as_out_of_date()
    {
        using ConsoleState state = Open();
        Patience.Until(state.Session!.Risk.Run.Completion);
        var page = state.Pages.OfType<ReportPage>().Single();
        RiskResult risk = state.Session.Risk.Run.Result!;
        page.Run.Start(state.Session.Edition, 1, (_, _) => new WrittenReport("a folder", ["risk"], [], 0, 0, risk));
        Patience.Until(page.Run.Completion);
        Assert.False(page.IsOutOfDate);
        Assert.True(state.Session.Apply(ScenarioEdit.Set(TomlPath.Of("required_km"), TomlValue.Of(90_000))).IsAccepted);
        Assert.True(page.IsOutOfDate);
        Patience.Until(state.Session.Risk.Run.Completion);
        Assert.Contains("fails by 90,000 km", Line(state, 0), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_scenario_opens_with_its_errors_and_one_that_cannot_be_read_does_not()
    {
        string path = Cli.Temporary("title = \"x\"\nrequired_km = -1\n");
        using var state = new ConsoleState(new NoDialogs(), TimeProvider.System,
            () => [new ScenarioEntry(path, null, "wrong"), new ScenarioEntry(path + "x", null, "gone")]);
        state.Press(KeyName.Enter);
        string screen = string.Join('\n', state.Lines(200, 24).Select(l => l.Text));
        Assert.Contains("line 2: required_km must be", screen, StringComparison.Ordinal);
        Assert.Null(state.Session);
        state.Press('o');
        state.Press(KeyName.Down);
        state.Press(KeyName.Enter);
        Assert.Contains("there is no such file", string.Join('\n', state.Lines(200, 24).Select(l => l.Text)), StringComparison.Ordinal);
        state.Press('x');
        Assert.Contains("Choose a scenario", string.Join('\n', state.Lines(80, 24).Select(l => l.Text)), StringComparison.Ordinal);
    }

    private static IReadOnlyList<Page> OpenPages()
    {
        using ConsoleState state = Open();
        return state.Pages;
    }

    private static ConsoleState Open()
    {
        var state = new ConsoleState(new NoDialogs(), TimeProvider.System, () => []) { RiskEvaluations = HeadlessConsole.FewEvaluations };
        state.Show(EditedScenario.Open(Cli.Shipped("warranty-clinic-van")));
        return state;
    }

    private static string Line(ConsoleState state, int line) => state.Lines(80, 24)[line].Text;

    private static void AssertFills(ConsoleState state, int width, int height)
    {
        IReadOnlyList<PageLine> lines = state.Lines(width, height);
        Assert.Equal(height, lines.Count);
        Assert.All(lines, line => Assert.Equal(width, line.Length));
    }
}
