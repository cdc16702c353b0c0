using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Causes;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

public sealed class CausesPageTests
{
    [Fact]
    public void Evidence_and_answer_stand_below_each_other_in_80_columns_and_beside_each_other_in_120()
    {
        using Session session = Opened.Session("broken-housing");
        using var page = new CausesPage(session, new NoDialogs());
        Opened.Study(page, 10_000);
        string narrow = Opened.Text(page), wide = Opened.Text(page, 120);
        Assert.DoesNotContain(narrow.Split('\n'), l => l.Contains("> life", StringComparison.Ordinal)
            && l.Contains("Broken at", StringComparison.Ordinal));
        Assert.Contains(wide.Split('\n'), l => l.Contains("> life", StringComparison.Ordinal)
            && l.Contains("Broken at 62,000 km", StringComparison.Ordinal));
        Assert.Contains("Effective sample size", narrow, StringComparison.Ordinal);
        Assert.Contains("nothing unusual", narrow, StringComparison.Ordinal);
        Assert.Contains("times likelier", narrow, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("survived", "75000", "", "survived_km = 75000")]
    [InlineData("failed between", "60000", "64000", "failed_between_km = [60000, 64000]")]
    [InlineData("failed at", "63000", "", "failed_at_km = 63000")]
    public void The_life_is_stated_in_the_scenario_and_can_be_taken_back(string kind, string first, string second, string expected)
    {
        using Session session = Opened.Session("broken-housing");
        using var page = new CausesPage(session, Filling(form =>
        {
            form.Set(0, kind);
            form.Set(1, first);
            if (second.Length > 0)
            {
                form.Set(2, second);
            }
        }));
        page.Press(KeyName.Enter);
        Assert.Contains(expected, session.Edited.Text, StringComparison.Ordinal);
        Assert.Equal(RunPhase.Running, page.Run.Standing.Phase); // it answers by itself
        page.Run.EndNow();
        session.Undo();
        Assert.Equal(new LifeEvidence.FailedAt(62_000), session.Document.Scenario.Evidence.Life);
    }

    [Fact]
    public void A_distance_that_cannot_be_is_refused_at_its_field()
    {
        using Session session = Opened.Session("broken-housing");
        Form? seen = null;
        using var page = new CausesPage(session, Filling(form =>
        {
            seen = form;
            form.Set(0, "failed between");
            form.Set(1, "64000");
            form.Set(2, "60000");
        }));
        page.Press(KeyName.Enter);
        Assert.Contains("above the first", seen!.FirstRefusal, StringComparison.Ordinal);
        seen.Set(2, "-1");
        Assert.NotNull(seen.Fields[2].Refusal);
        Assert.Equal(0, session.Edition);
    }

    [Fact]
    public void A_factor_is_measured_changed_and_taken_out()
    {
        using Session session = Opened.Session("warranty-clinic-van");
        Action<Form> fill = form =>
        {
            form.Set(0, "wall thickness");
            form.Set(1, "6.5");
            form.Set(2, "0.1");
        };
        using var page = new CausesPage(session, Filling(f => fill(f)));
        Assert.Contains("Nothing was found yet", Opened.Text(page), StringComparison.Ordinal);
        page.Press('m');
        Assert.Equal(new Measurement("axle.wall_mm", 6.5, 0.1), Assert.Single(session.Document.Scenario.Evidence.Measured));
        fill = form => form.Set(1, "6.8");
        page.Press(KeyName.Down);
        page.Press(KeyName.Enter);
        Assert.Equal(6.8, Assert.Single(session.Document.Scenario.Evidence.Measured).Value);
        page.Press(KeyName.Delete);
        Assert.True(session.Document.Scenario.Evidence.IsEmpty);
        session.Undo();
        session.Undo();
        session.Undo();
        Assert.False(session.Edited.IsUnsaved);
    }

    [Fact]
    public void A_state_is_known_of_a_category_by_its_name()
    {
        using Session session = Opened.Session("broken-housing");
        using var page = new CausesPage(session, Filling(form =>
        {
            form.Set(0, "weld category");
            form.Set(1, "W1");
        }));
        page.Press('k');
        KnownState known = Assert.Single(session.Document.Scenario.Evidence.Known);
        Assert.Equal("W1", session.Model.Factors.Find(known.Factor)!.Show(known.Value));
        Assert.Contains("weld category: is W1", Opened.Text(page), StringComparison.Ordinal);
    }

    [Fact]
    public void What_shows_in_the_life_alone_cannot_be_measured()
    {
        using Session session = Opened.Session("broken-housing");
        string[] names = [.. MeasureForm.Measurable(session).Select(f => f.Name)];
        Assert.Contains("axle.wall_mm", names);
        Assert.DoesNotContain("fatigue.miner_sum", names);
        Assert.DoesNotContain("axle.wheel_offset_mm", names); // a choice
    }

    private static NoDialogs Filling(Action<Form> fill) => new() { Filling = fill };
}
