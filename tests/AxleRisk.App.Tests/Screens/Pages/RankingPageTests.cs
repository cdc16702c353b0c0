using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Screens.Pages.Ranking;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

/// <summary>The ranking and the page of one factor as states.</summary>
public sealed class RankingPageTests
{
    [Fact]
    public void Every_factor_has_a_bar_with_place_and_interval_and_ties_are_marked()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        using RankingPage page = Ranked(session);
        string text = Opened.Text(page);
        RankResult result = page.Run.Result!;
        Assert.All(result.Factors, f => Assert.Contains(RankingList.Percent(f.FailureShare), text, StringComparison.Ordinal));
        Assert.Equal(result.Factors.Count(f => f.IsTied), text.Split('\n').Skip(2).Take(result.Factors.Length).Count(l => l[3] == '='));
        Assert.Contains("█", text, StringComparison.Ordinal);
        Assert.Contains("(of 8,000 allowed", text, StringComparison.Ordinal);
        Assert.Contains("seed 1", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Arrows_choose_a_factor_Enter_opens_it_and_Esc_goes_back()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        using RankingPage page = Ranked(session);
        Factor second = page.Run.Result!.Factors[1].Factor;
        page.Press(KeyName.Down);
        Assert.Contains($"{second.Label} ({second.Name}): ", Opened.Text(page), StringComparison.Ordinal);
        page.Press(KeyName.Enter);
        Assert.Equal(second.Label, page.Opened!.Name);
        Assert.True(Opened.HasKey(page, "Esc"));
        page.Press(KeyName.Escape);
        Assert.Null(page.Opened);
    }

    [Fact]
    public void A_factor_is_drawn_across_its_range_with_every_point_in_words()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        using var combinations = new CombinationsPage(session, new NoDialogs());
        using var page = new FactorPage(session, new NoDialogs(), combinations, "fatigue.miner_sum");
        Opened.Study(page, 500);
        string text = Opened.Text(page);
        Assert.Contains(text, c => c is >= '\u2801' and <= '\u28FF');
        Assert.Contains("base case", text, StringComparison.Ordinal);
        Assert.Contains("fewer failures", text, StringComparison.Ordinal); // a larger Miner sum lasts longer
        Assert.All(FactorRangeAnalysis.Levels, level => Assert.Contains($"{100 * level:0} % point", text, StringComparison.Ordinal));
        Assert.Contains("c does", text, StringComparison.Ordinal); // partners are not looked for yet
        Assert.True(Opened.HasKey(page, "c"));
    }

    [Fact]
    public void A_factor_that_becomes_certain_says_so()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        using var combinations = new CombinationsPage(session, new NoDialogs());
        using var page = new FactorPage(session, new NoDialogs(), combinations, "axle.wall_mm");
        Assert.True(session.Apply(ScenarioEdit.Set(TomlPath.Of("axle.wall_mm"), TomlValue.Of(6))).IsAccepted);
        Assert.Contains("certain now", Opened.Text(page), StringComparison.Ordinal);
        page.Press('r');
        Assert.Equal(RunPhase.Idle, page.Run.Standing.Phase);
    }

    [Fact]
    public void The_tables_are_those_of_the_command()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        using RankingPage page = Ranked(session);
        page.Press('t');
        string text = Opened.Text(page);
        Assert.Contains("Sobol' indices of ln life", text, StringComparison.Ordinal);
        page.Press('t');
        Assert.DoesNotContain("Sobol' indices of ln life", Opened.Text(page), StringComparison.Ordinal);
    }

    private static RankingPage Ranked(Session session)
    {
        var page = new RankingPage(session, new NoDialogs(), new CombinationsPage(session, new NoDialogs()));
        Opened.Study(page, 8000);
        return page;
    }
}
