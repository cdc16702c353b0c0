using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

public sealed class CombinationsPageTests
{
    [Fact]
    public void The_grid_and_the_worst_combinations_are_shown_and_g_changes_the_figure()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        using var page = new CombinationsPage(session, new NoDialogs());
        Opened.Study(page, 20_000);
        string text = Opened.Text(page);
        Assert.Contains("% that fail with both", text, StringComparison.Ordinal);
        Assert.Contains("times the average", text, StringComparison.Ordinal);
        Assert.Contains("of all failures", text, StringComparison.Ordinal);
        Assert.Contains(" evaluations, seed 1", text, StringComparison.Ordinal);
        page.Press('g');
        Assert.Contains("if they multiplied", Opened.Text(page), StringComparison.Ordinal);
        page.Press('g');
        Assert.Contains("Shapley interaction, %", Opened.Text(page), StringComparison.Ordinal);
        page.Press('g');
        Assert.Equal(text, Opened.Text(page));
    }

    [Fact]
    public void A_cell_tells_the_failure_probability_of_the_pair_in_digits()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        using var page = new CombinationsPage(session, new NoDialogs());
        Opened.Study(page, 20_000);
        CombineResult result = page.Run.Result!;
        PairEffect worst = result.Pairs.MaxBy(p => p.Together.Estimate)!;
        string grid = string.Join('\n', PairGrid.Lines(result, PairMeasure.Together, 80).Select(l => l.Text));
        int cells = grid.Split($"{100 * worst.Together.Estimate:0}▓").Length - 1;
        Assert.True(cells >= 2 && cells % 2 == 0, $"{cells} cells"); // on both sides of the diagonal
        Assert.All(PairGrid.Lines(result, PairMeasure.Together, 80), l => Assert.True(l.Length <= 80));
    }

    [Fact]
    public void Without_a_factor_there_is_nothing_to_run()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        foreach (string name in session.Model.Factors.Factors.Select(f => f.Name).ToArray())
        {
            double nominal = session.Document.Scenario.Inputs.Single(i => i.Name == name).Value.Nominal;
            Assert.True(session.Apply(ScenarioEdit.Set(TomlPath.Of(name), TomlValue.Of(nominal))).IsAccepted);
        }

        using var page = new CombinationsPage(session, new NoDialogs());
        Assert.Empty(page.Keys);
        Assert.Contains("nothing to combine", Opened.Text(page), StringComparison.Ordinal);
    }
}
