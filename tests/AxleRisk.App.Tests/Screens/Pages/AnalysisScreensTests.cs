using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Causes;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Screens.Pages.Ranking;
using AxleRisk.App.Screens.Pages.Remedies;
using Terminal.Gui.Input;
using Xunit;
using static AxleRisk.App.Tests.Screens.HeadlessConsole;

namespace AxleRisk.App.Tests.Screens.Pages;

/// <summary>The pages of the analyses on a screen, driven by keys.</summary>
public sealed class AnalysisScreensTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void A_factor_is_opened_from_the_ranking_and_left_again(int width, int height)
    {
        string bars = "", factor = "", back = "";
        Run(
            "benchmark-five-legs", width, height, s => Find<RankingPage>(s.State).ChosenEvaluations = 8000,
            Keys(new Key('4'), new Key('r')), Pause(),
            Until(s => Find<RankingPage>(s).Run.Completion), Pause(), Look_at(s => bars = s), Keys(Key.CursorDown, Key.Enter),
            Pause(), s => Find<RankingPage>(s.State).Opened!.Run.EndNow(), Until(s => Find<RankingPage>(s).Opened!.Run.Completion),
            Pause(), Look_at(s => factor = s),
            Keys(Key.Esc), Pause(), Look_at(s => back = s));
        Assert.Contains("Share of the failures", bars, StringComparison.Ordinal);
        Assert.Contains("Enter open factor", bars, StringComparison.Ordinal);
        Assert.Contains("Esc back", factor, StringComparison.Ordinal);
        Assert.DoesNotContain("Share of the failures", factor, StringComparison.Ordinal);
        Assert.Contains("Share of the failures", back, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Evidence_is_typed_into_its_form(int width, int height)
    {
        string form = "", page = "";
        Run(
            "warranty-clinic-van", width, height, Keys(new Key('6'), Key.Enter), Pause(), Type("s"), Keys(Key.Tab), Type("180000"),
            Pause(), Look_at(s => form = s),
            Keys(Key.Enter), Pause(), s => Find<CausesPage>(s.State).Run.EndNow(), Until(s => Find<CausesPage>(s).Run.Completion), Pause(),
                Look_at(s => page = s));
        Assert.Contains("survived", form, StringComparison.Ordinal);
        Assert.Contains("life: survived 180,000 km", page, StringComparison.Ordinal);
        Assert.Contains("(not saved)", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_remedy_is_switched_with_the_space_bar()
    {
        string screen = "";
        Run("broken-housing", 80, 24, Keys(new Key('7'), Key.Space), Pause(), Look_at(s => screen = s),
            s => Find<RemediesPage>(s.State).Run.EndNow());
        Assert.Contains("> [x] dampers in time", screen, StringComparison.Ordinal);
        Assert.Contains("s stop", screen, StringComparison.Ordinal); // it answers by itself
    }

    [Fact]
    public void The_combinations_fit_80_columns_and_change_their_grid()
    {
        string one = "", other = "";
        Run(
            "benchmark-five-legs", 80, 24, s => Find<CombinationsPage>(s.State).ChosenEvaluations = 8000, Keys(new Key('5'), new Key('r')),
            Pause(),
            Until(s => Find<CombinationsPage>(s).Run.Completion), Pause(), Look_at(s => one = s), Keys(new Key('g')), Pause(),
                Look_at(s => other = s));
        Assert.Contains("% that fail with both", one, StringComparison.Ordinal);
        Assert.Contains("if they multiplied", other, StringComparison.Ordinal);
    }

    private static T Find<T>(AxleRisk.App.Screens.Shell.ConsoleState state)
        where T : Page => state.Pages.OfType<T>().Single();
}
