using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens;

/// <summary>Answers that follow the scenario, and those that need not.</summary>
public sealed class SessionTests
{
    [Fact]
    public void Undo_brings_the_answers_back_at_once()
    {
        using ConsoleState state = Open();
        Session session = state.Session!;
        Patience.Until(session.Risk.Run.Completion);
        RiskResult before = session.Risk.Fresh!;
        RunFleet(state);
        session.Apply(Set("required_km", 90_000));
        Assert.NotSame(before, session.Risk.Fresh);
        Assert.True(state.Pages.OfType<FleetPage>().Single().IsOutOfDate);
        state.Press(KeyName.Undo);
        Assert.Same(before, session.Risk.Fresh);
        Assert.False(state.Pages.OfType<FleetPage>().Single().IsOutOfDate);
        Assert.Contains("Taken back", Line(state, 2), StringComparison.Ordinal);
        Assert.Equal(RunPhase.Done, session.Risk.Run.Standing.Phase);
    }

    [Theory]
    [InlineData("title", "another")]
    [InlineData("currency", "EUR")]
    public void What_changes_no_number_makes_nothing_out_of_date(string key, string text)
    {
        using ConsoleState state = Open();
        Session session = state.Session!;
        Patience.Until(session.Risk.Run.Completion);
        RunFleet(state);
        RiskResult before = session.Risk.Fresh!;
        Assert.True(session.Apply(ScenarioEdit.Set(TomlPath.Of(key), TomlValue.Of(text))).IsAccepted);
        Assert.True(session.Apply(new ScenarioEdit("note", [new TomlEdit.Note(TomlPath.Of("required_km"), "of the contract")])).IsAccepted);
        Assert.Equal(2, session.Edition);
        Assert.Same(before, session.Risk.Fresh);
        Assert.False(state.Pages.OfType<FleetPage>().Single().IsOutOfDate);
    }

    [Fact]
    public void The_same_numbers_written_otherwise_have_the_same_key_and_others_have_not()
    {
        string text = Files.Good.Text;
        string Key(string t) => ScenarioNumbers.KeyOf(t, Files.Good.Parse(t));
        Assert.Equal(Key(text), Key(text.Replace("50000", "50_000.0").Replace("\"A tube on gravel\"", "\"x\"") + "# end\n"));
        Assert.NotEqual(Key(text), Key(text.Replace("50000", "50001")));
        Assert.NotEqual(Key(text), Key(text.Replace("\"gravel\"", "\"stones\"")));
    }

    [Fact]
    public void A_data_file_is_part_of_the_key()
    {
        string path = Cli.Temporary(Files.Good.With("wall_mm = 6", """wall_mm = { distribution = "sample", file = "w.csv", column = "w" }"""));
        string data = Path.Combine(Path.GetDirectoryName(path)!, "w.csv");
        File.WriteAllText(data, "w\n5.9\n6.1\n");
        EditedScenario first = EditedScenario.Open(path);
        File.WriteAllText(data, "w\n5.9\n6.2\n");
        EditedScenario second = EditedScenario.Open(path);
        Assert.NotEqual(ScenarioNumbers.KeyOf(first.Text, first.Document!), ScenarioNumbers.KeyOf(second.Text, second.Document!));
    }

    [Fact]
    public void A_pinned_scenario_tells_each_change_with_its_paired_interval()
    {
        using ConsoleState state = Open();
        Session session = state.Session!;
        Patience.Until(session.Risk.Run.Completion);
        state.Press('b');
        Assert.Contains("pinned, fails by 150,000 km: 7.4", Line(state, 0), StringComparison.Ordinal);
        LifeModel before = session.Model;
        session.Apply(Set("axle.lever_arm_mm", 245));
        Patience.Until(session.Baseline!.Run.Completion);

        // The same figures as the compare study gives for the two.
        LifeModel[] models = [before, session.Model];
        var settings = new StudySettings(HeadlessConsole.FewEvaluations, session.Seed, Comparison.DefaultSampling(models));
        ComparedCase after = Comparison.Run(models, 150_000, settings, new RunOptions()).Cases[1];
        ComparedCase shown = session.Baseline.Fresh!.Cases[1];
        Assert.Equal(after.Change!.Difference.Estimate, shown.Change!.Difference.Estimate, 1e-9);
        Assert.Equal(after.Change.Difference.Low, shown.Change.Difference.Low, 1e-9);
        Assert.Matches(@"by 150,000 km: \d\.\d+ -> \d\.\d+ %, [+-]\d\.\d+ \([+-]\d\.\d+ to [+-]\d\.\d+\)", Line(state, 0));

        // Paired: far narrower than the two intervals apart.
        double apart = session.Risk.Run.Result!.AtRequired.Probability is var p ? p.High - p.Low : 0;
        Assert.True(shown.Change.Difference.High - shown.Change.Difference.Low < 0.7 * apart);

        state.Press(KeyName.Undo);
        Assert.Contains("pinned, fails by", Line(state, 0), StringComparison.Ordinal);
        state.Press(KeyName.Redo);
        Assert.Contains(" -> ", Line(state, 0), StringComparison.Ordinal); // known already
        state.Press('b');
        Assert.Contains("  fails by", Line(state, 0), StringComparison.Ordinal);
    }

    [Fact]
    public void The_top_line_has_the_figure_of_the_page()
    {
        using ConsoleState state = Open("desert-crossing");
        Patience.Until(state.Session!.Risk.Run.Completion);
        state.Press('8');
        Assert.Contains("fails on the trip: not run", Line(state, 0), StringComparison.Ordinal);
        var page = (TripPage)state.Front;
        page.ChosenEvaluations = 64;
        page.Start();
        Patience.Until(page.Run.Completion);
        Assert.Contains($"fails on the trip: {App.Text.Figures.Probability(page.Run.Result!.Probability)} (", Line(state, 0), StringComparison.Ordinal);
        state.Press('3');
        Assert.Contains("fails by 4,000 km: ", Line(state, 0), StringComparison.Ordinal);
        state.Session.Apply(Set("required_km", 3_000));
        state.Press('8');
        Assert.Contains("fails on the trip: out of date", Line(state, 0), StringComparison.Ordinal);
    }

    private static void RunFleet(ConsoleState state)
    {
        FleetPage page = state.Pages.OfType<FleetPage>().Single();
        page.ChosenEvaluations = 2_000;
        page.Start();
        Patience.Until(page.Run.Completion);
        Assert.False(page.IsOutOfDate);
    }

    private static ScenarioEdit Set(string key, double value) => ScenarioEdit.Set(TomlPath.Of(key), TomlValue.Of(value));

    private static ConsoleState Open(string scenario = "warranty-clinic-van")
    {
        var state = new ConsoleState(new NoDialogs(), TimeProvider.System, () => []) { RiskEvaluations = HeadlessConsole.FewEvaluations };
        state.Show(EditedScenario.Open(Cli.Shipped(scenario)));
        return state;
    }

    private static string Line(ConsoleState state, int line) => state.Lines(110, 24)[line].Text;
}
