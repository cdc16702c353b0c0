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
        Run("warranty-clinic-van", width, height, Until(s => s.Session!.Risk.Run.Completion), Pause(), Look_at(s => screen = s), Keys(Key.Q));
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
            "benchmark-five-legs", 80, 24, Pause(), s => s.App.InjectSequence(InputInjectionExtensions.LeftButtonClick(new System.Drawing.Point(2, 1))),
            Pause(), Look_at(s => page = s),
            s => s.App.InjectMouse(new Mouse { ScreenPosition = new System.Drawing.Point(5, 10), Flags = MouseFlags.WheeledDown }), Pause(), Look_at(s => scrolled = s));
        Assert.Contains(" 1-20 of ", page, StringComparison.Ordinal);
        Assert.Contains(" 4-23 of ", scrolled, StringComparison.Ordinal);
    }
}
