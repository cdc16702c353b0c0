using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Tests.Commands;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Xunit;
using static AxleRisk.App.Tests.Screens.HeadlessConsole;

namespace AxleRisk.App.Tests.Screens;

/// <summary>What the screen shows, driven by keys and clicks.</summary>
public sealed class ConsoleWindowTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void A_scenario_opened_shows_its_risk_and_leaves_with_q(int width, int height)
    {
        string screen = "";
        Run("warranty-clinic-van", width, height, Until(s => s.Session!.Risk.Run.Completion), Pause(), Look_at(s => screen = s),
            Keys(Key.Q));
        Assert.Contains("Failure probability by 150,000 km: 7.4", screen, StringComparison.Ordinal);
        Assert.Contains("Done: 4,096 evaluations", screen, StringComparison.Ordinal);
        Assert.Contains("q quit", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_list_opens_the_scenario_chosen_with_the_arrows()
    {
        ScenarioEntry[] entries =
        [
            new(Cli.Shipped("desert-crossing"), "a desert", null), new(Cli.Shipped("benchmark-five-legs"), "five legs", null),
        ];
        string list = "", open = "";
        HeadlessConsole.Run(
            _ => { }, entries, 80, 24, Pause(), Look_at(s => list = s), Keys(Key.CursorDown, Key.Enter), Pause(), Look_at(s => open = s));
        Assert.Contains("Choose a scenario", list, StringComparison.Ordinal);
        Assert.Contains("five legs", list, StringComparison.Ordinal);
        Assert.Contains("fails by 50,000 km", open, StringComparison.Ordinal);
    }

    [Fact]
    public void F1_explains_and_any_key_goes_back()
    {
        string help = "", back = "";
        Run("benchmark-five-legs", 80, 24, Keys(Key.F1), Pause(), Look_at(s => help = s), Keys(Key.X), Pause(), Look_at(s => back = s));
        Assert.Contains("it is no measured failure rate", help.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.DoesNotContain("measured failure rate", back, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_number_of_evaluations_is_refused_at_the_field_and_a_right_one_is_run()
    {
        string refused = "", done = "";
        Run(
            "benchmark-five-legs", 80, 24, Until(s => s.Session!.Risk.Run.Completion), Keys(Key.E), Pause(),
            Type("many"), Keys(Key.Enter), Pause(), Look_at(s => refused = s), Keys(Key.A.WithCtrl), Type("5000"), Keys(Key.Enter), Pause(),
            Until(s => s.Session!.Risk.Run.Completion), Pause(), Look_at(s => done = s));
        Assert.Contains("Not right: a whole number", refused, StringComparison.Ordinal);
        Assert.Contains("Done: 5,000 evaluations", done, StringComparison.Ordinal);
    }

    [Fact]
    public void A_click_on_a_tab_opens_the_page_and_the_wheel_scrolls_it()
    {
        string page = "", scrolled = "";
        Run(
            "benchmark-five-legs", 80, 24, Pause(), s =>
                s.App.InjectSequence(InputInjectionExtensions.LeftButtonClick(new System.Drawing.Point(7, 1))),
            Pause(), Look_at(s => page = s),
            s => s.App.InjectMouse(new Mouse { ScreenPosition = new System.Drawing.Point(5, 10), Flags = MouseFlags.WheeledDown }),
                Pause(), Look_at(s => scrolled = s));
        Assert.Contains(" 1-20 of ", page, StringComparison.Ordinal);
        Assert.Contains(" 4-23 of ", scrolled, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void A_wrong_parameter_is_refused_below_its_field_and_Esc_leaves_everything_as_it_was(int width, int height)
    {
        string form = "", back = "";
        Run(
            "warranty-clinic-van", width, height, Keys(Key.D1), Pause(), Keys(Key.CursorDown, Key.CursorDown, Key.CursorDown, Key.Enter),
            Pause(), Pause(), Keys(Key.Tab, Key.Tab, Key.Tab), Pause(),
            Keys(Key.A.WithCtrl), Type("-3"), Pause(), Look_at(s => form = s), Keys(Key.Esc),
                Pause(), Look_at(s => back = s));
        Assert.Contains("sprung mass: ", form, StringComparison.Ordinal);
        Assert.Contains("^ ", form, StringComparison.Ordinal);
        Assert.Contains("Not right: sd", form, StringComparison.Ordinal);
        Assert.DoesNotContain("(not saved)", back, StringComparison.Ordinal);
    }

    [Fact]
    public void An_edit_is_marked_as_not_saved_and_leaving_asks_first()
    {
        string edited = "", question = "", stayed = "";
        Run(
            "warranty-clinic-van", 80, 24, Keys(Key.D1), Pause(), Keys(Key.CursorDown, Key.Enter), Pause(), Pause(), Keys(Key.A.WithCtrl),
            Type("90000"), Keys(Key.Enter),
            Pause(), Pause(), Look_at(s => edited = s), Keys(Key.Q), Pause(), Pause(), Look_at(s => question = s), Keys(Key.Esc), Pause(),
                Pause(), Look_at(s => stayed = s));
        Assert.Contains("(not saved)", edited, StringComparison.Ordinal);
        Assert.Contains("fails by 90,000 km", edited, StringComparison.Ordinal);
        Assert.Contains("Discard them", question, StringComparison.Ordinal);
        Assert.Contains("required_km", stayed, StringComparison.Ordinal);
    }
}
