using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Screens.InTerminal;

/// <summary>The whole way of a reader in a real terminal: open, change, run, read, save, leave.</summary>
public sealed class WholeWayTests
{
    [Fact]
    public void A_wall_tolerance_is_changed_its_ranking_read_and_the_file_saved()
    {
        Assert.SkipUnless(Tmux.IsHere, "tmux is not here: there is no terminal to run the console in");
        string before = File.ReadAllText(Cli.Shipped("warranty-clinic-van"));
        string path = Cli.Temporary(before);
        using var terminal = new Tmux("console", path);
        terminal.Until("Failure probability by 150,000 km");

        terminal.Press("1");
        terminal.PressUntil("Down", "^ *> ", "> wall thickness");
        terminal.Press("Enter");
        terminal.Until("stated by");
        terminal.PressUntil("Left", "│kind ", "< tolerance");
        terminal.Press("Tab", "Tab", "C-a", "0.2", "Tab", "C-a", "0.2");
        terminal.Until(screen => screen.Split('\n').Count(l => l.Contains(" 0.2 ", StringComparison.Ordinal)) == 2, "both limits");
        terminal.Press("Enter");
        string edited = terminal.Until("(not saved)");
        Assert.Matches(@"normal\(7\.0, sd 0\.\d+, 6\.8\.\.7\.2\)", edited);
        Assert.Equal(before, File.ReadAllText(path)); // not before it is saved

        terminal.Press("4", "e");
        terminal.Until("How many evaluations");
        terminal.Press("C-a", "2000", "Enter");
        string ranking = terminal.Until(screen => screen.Contains("\nDone: ", StringComparison.Ordinal)
            && screen.Contains("4>", StringComparison.Ordinal), "the ranking done");
        Assert.Contains("stress factor", ranking, StringComparison.Ordinal);
        Assert.Matches(@"\d %", ranking);

        terminal.Press("C-s");
        terminal.Until("Saved ");
        terminal.Press("q");
        string left = terminal.Until("exit code 0");
        Assert.DoesNotContain("Ranking", left, StringComparison.Ordinal); // the screen from before is back

        string[] changed = [.. File.ReadAllText(path).Split('\n').Except(before.Split('\n'))];
        Assert.StartsWith("wall_mm = ", Assert.Single(changed), StringComparison.Ordinal);
        var wall = (Value.Uncertain)ScenarioReader.ReadFile(path).Scenario.Find(Quantities.Wall)!.Value;
        Assert.Equal((6.8, 7.2), (wall.Distribution.Minimum, wall.Distribution.Maximum));
    }

    [Fact]
    public void Changes_of_a_console_that_was_killed_are_offered_by_the_next()
    {
        Assert.SkipUnless(Tmux.IsHere, "tmux is not here: there is no terminal to run the console in");
        string path = Cli.Temporary(File.ReadAllText(Cli.Shipped("benchmark-five-legs")));
        using (var first = new Tmux("console", path))
        {
            first.Until("Failure probability by");
            Distance(first, "90000");
            first.Until("(not saved)");
            first.Until(_ => File.Exists(path + ".unsaved"), "the changes kept");
            first.Kill();
        }

        using var second = new Tmux("console", path);
        second.Until("Changes found");
        second.Press("Enter"); // the last answer: take them
        second.Until(screen => screen.Contains("fails by 90,000 km", StringComparison.Ordinal)
            && screen.Contains("(not saved)", StringComparison.Ordinal), "the changes taken");
    }

    [Fact]
    public void Two_consoles_on_one_file_cannot_harm_each_other_and_a_killed_one_loses_nothing()
    {
        Assert.SkipUnless(Tmux.IsHere, "tmux is not here: there is no terminal to run the console in");
        string before = File.ReadAllText(Cli.Shipped("benchmark-five-legs"));
        string path = Cli.Temporary(before);
        using var first = new Tmux("console", path);
        first.Until("Failure probability by");
        using var second = new Tmux("console", path);
        second.Until("Open elsewhere");
        second.Press("Enter"); // the last answer: only look
        second.Until("(only look)");

        Distance(first, "90000");
        first.Until("(not saved)");
        first.Until(_ => File.Exists(path + ".unsaved"), "the changes kept");
        second.Press("1", "Down", "Enter");
        second.Until("only to look at");

        // Removed by someone: written again.
        File.Delete(path + ".unsaved");
        first.Until(_ => File.Exists(path + ".unsaved"), "the changes kept again");
        first.Kill();

        second.Until("left changes not saved");
        second.Press("o");
        second.Until("open by path");
        second.Press("p");
        second.Until("Path of the scenario file");
        second.Press(path, "Enter");
        second.Until("Changes found");
        second.Press("Enter"); // the last answer: take them
        second.Until("fails by 90,000 km");
        second.Press("C-s");
        second.Until("Saved ");
        second.Press("q");
        second.Until("exit code 0");
        Assert.Equal(["required_km = 90000"], File.ReadAllText(path).Split('\n').Except(before.Split('\n')));
        Assert.Equal([path], Directory.GetFiles(Path.GetDirectoryName(path)!));
    }

    [Fact]
    public void From_nothing_to_a_written_report_with_a_leg_a_trip_and_evidence_of_ones_own()
    {
        Assert.SkipUnless(Tmux.IsHere, "tmux is not here: there is no terminal to run the console in");
        string path = Path.Combine(TemporaryFolder.New(), "mine.toml"), report = Path.Combine(Path.GetDirectoryName(path)!, "r");
        using (var terminal = new Tmux("console", path))
        {
            terminal.Until("A new scenario");
            terminal.Press("Right"); // an expedition
            terminal.Until("5000 ");
            terminal.Press("Enter");
            terminal.Until(screen => screen.Contains("Failure probability by 5,000 km", StringComparison.Ordinal), "a first answer");
            Assert.False(File.Exists(path));

            terminal.Press("t");
            terminal.Until("legs of use");
            terminal.Press("a");
            terminal.Until("one more");
            terminal.Press("f", "o", "r", "d", "Enter");
            terminal.UntilMatch(@">  *ford +share 0.1", "the leg");

            terminal.Press("Escape");
            terminal.Until("3>Risk");
            terminal.Press("8");
            terminal.Until("8>Trip");
            terminal.Press("t");
            terminal.UntilMatch(@">  *trip ", "the trip in the list");
            terminal.Press("Down", "a");
            terminal.Until("one more");
            terminal.Press("l", "a", "s", "t", "Tab", "4", "0", "0", "Tab", "Tab", "f", "Enter");
            terminal.UntilMatch(@">  *last +distance 400 km, like ford", "the leg of the trip");

            terminal.Press("6");
            terminal.Until("6>");
            terminal.Press("Enter");
            terminal.Until("Life of this axle");
            terminal.Press("f");
            terminal.Until("< failed at");
            terminal.Press("Tab", "9", "0", "0", "0", "Enter");
            terminal.Until("failed at 9,000 km");

            terminal.Press("0");
            terminal.Until("0>");
            terminal.Press("r");
            terminal.Until("evaluations ");
            terminal.Press(report, "Tab", "1000", "Enter");
            terminal.Until(screen => screen.Contains("\nDone: ", StringComparison.Ordinal)
                && screen.Contains("0>", StringComparison.Ordinal), "the report written");

            terminal.Press("C-s");
            terminal.Until("Saved ");
            terminal.Press("q");
            terminal.Until("exit code 0");
        }

        Assert.True(File.Exists(Path.Combine(report, "report.html")), string.Join(' ', Directory.GetFiles(report)));
        Scenario scenario = ScenarioReader.ReadFile(path).Scenario;
        Assert.Equal("ford", scenario.Legs[^1].Name);
        Assert.Equal(("last", 400.0), (scenario.Trip!.Legs[^1].Name, scenario.Trip.Inputs.First(i => i.Name == "trip.last.km").Value.Nominal));
        Assert.Equal(9000, ((LifeEvidence.FailedAt)scenario.Evidence.Life!).Km);

        using var again = new Tmux("console", path);
        again.Until("Failure probability by 5,000 km");
        again.Press("t");
        again.UntilMatch(@">  *legs of use +4", "the legs as they were saved");
    }

    [Fact]
    public void The_tolerance_of_the_wall_takes_six_keys()
    {
        Assert.SkipUnless(Tmux.IsHere, "tmux is not here: there is no terminal to run the console in");
        string path = Cli.Temporary(File.ReadAllText(Cli.Shipped("warranty-clinic-van")));
        using var terminal = new Tmux("console", path);
        terminal.Until("Failure probability by");
        terminal.Press("1");
        terminal.Until("1>");
        terminal.Press("T");
        terminal.Until("Cp assumed");
        terminal.Press("0", ".", "3");
        terminal.Until(screen => screen.Split('\n').Count(l => l.Contains(" 0.3 ", StringComparison.Ordinal)) == 2, "both limits");
        terminal.Press("Enter");
        terminal.Until("(not saved)");
        terminal.Press("C-s");
        terminal.Until("Saved ");
        var wall = (Value.Uncertain)ScenarioReader.ReadFile(path).Scenario.Find(Quantities.Wall)!.Value;
        Assert.Equal(0.6, wall.Distribution.Maximum - wall.Distribution.Minimum, 9);
    }

    [Fact]
    public void A_console_that_is_stopped_gives_the_terminal_back_and_takes_it_again()
    {
        Assert.SkipUnless(Tmux.IsHere, "tmux is not here: there is no terminal to run the console in");
        string path = Cli.Temporary(File.ReadAllText(Cli.Shipped("benchmark-five-legs")));
        using var terminal = new Tmux("console", path);
        terminal.Until("Failure probability by");
        terminal.Send("TSTP");
        terminal.Until(screen => terminal.IsStopped && !screen.Contains("Failure probability", StringComparison.Ordinal), "the screen before");
        terminal.Send("CONT");
        terminal.Until("Failure probability by");
        terminal.Press("#");
        terminal.Until(screen => screen.Contains("Plain characters", StringComparison.Ordinal) && screen.All(char.IsAscii), "plain characters");
        terminal.Press("q");
        terminal.Until("exit code 0");
    }

    private static void Distance(Tmux terminal, string km)
    {
        terminal.Press("1", "Down", "Enter");
        terminal.Until("the distance the axle must last");
        terminal.Press("C-a", km, "Enter");
    }
}
