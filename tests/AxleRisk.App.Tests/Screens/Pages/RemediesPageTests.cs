using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Remedies;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

public sealed class RemediesPageTests
{
    [Fact]
    public void Those_switched_on_are_compared_with_none_together()
    {
        using Session session = Opened.Session("broken-housing");
        using var page = new RemediesPage(session, new NoDialogs()) { ChosenEvaluations = 1500 };
        page.Press(' ');
        page.Press(KeyName.Down);
        page.Press(KeyName.Down);
        page.Press(' ');
        Opened.Study(page, 1500);
        Assert.Equal(["dampers in time", "housing with a 7 mm wall"], page.On.Select(r => r.Name));
        RemedySetResult result = page.Run.Result!;
        Assert.Equal(5, result.Comparison.Cases.Length); // none, both together, three alone
        Assert.True(result.Together!.Change!.IsRiskDistinct);
        // However it is wrapped.
        string text = string.Join(' ', Opened.Text(page).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("With dampers in time + housing with a 7 mm wall:", text, StringComparison.Ordinal);
        Assert.Contains("times as many failures (paired", text, StringComparison.Ordinal);
        Assert.Contains("Cost together 1,130", text, StringComparison.Ordinal);
        Assert.Contains("seed 1", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_chosen_set_has_the_digits_of_the_remedies_command_for_the_pair()
    {
        using Session session = Opened.Session("broken-housing");
        var settings = new StudySettings(1500, 1, Core.Sampling.SamplingPlan.Names[0]);
        RemedySetResult ours = RemedySetResult.Run(session.Model, session.Document.Scenario.Remedies[..2], settings, new RunOptions());
        var theirs = Core.Analyses.Remedies.RemediesAnalysis.Run(session.Model, settings, new RunOptions());
        Assert.Equal(theirs.Rows.Single(r => r.Name == "dampers in time + 600 kg and no more").Case, ours.Together);
        Assert.Equal(theirs.Rows.Single(r => r.Name == "600 kg and no more").Case, ours.Alone(1));
    }

    [Fact]
    public void Switching_while_a_result_is_shown_marks_it_until_the_new_one_is_there()
    {
        using Session session = Opened.Session("broken-housing");
        using var page = new RemediesPage(session, new NoDialogs()) { ChosenEvaluations = 1500 };
        page.Press(' ');
        Opened.Study(page, 1500);
        page.Press(' ');
        Assert.Empty(page.On);
        Patience.Until(page.Run.Completion);
        Assert.DoesNotContain("OUT OF DATE", Opened.Text(page), StringComparison.Ordinal);
        Assert.Contains("None is switched on", Opened.Text(page), StringComparison.Ordinal);
    }

    [Fact]
    public void A_remedy_is_added_changed_and_taken_out_by_the_form()
    {
        using Session session = Opened.Session("broken-housing");
        Action<Form> fill = form =>
            Fill(form, ("name", "better weld"), ("cost", "75"), ("input", "weld category"), ("  is", "E"));
        using var page = new RemediesPage(session, new NoDialogs { Filling = f => fill(f) });
        page.Press('a');
        Remedy added = session.Document.Scenario.Remedies[^1];
        Assert.Equal(("better weld", 75.0), (added.Name, added.Cost!.Value));
        Assert.Equal("detail.category = E", $"{added.Changes[0].Input} {added.Changes[0].Description}");
        string before = session.Edited.Text;
        foreach (int _ in Enumerable.Range(0, 3))
        {
            page.Press(KeyName.Down);
        }

        fill = form => Fill(form, ("input", "speed factor"), ("  how", "times"), ("  value", "0.9"), ("cost", ""));
        page.Press(KeyName.Enter);
        Remedy changed = session.Document.Scenario.Remedies[^1];
        Assert.Equal("use.speed_factor x 0.9", $"{changed.Changes.Single().Input} {changed.Changes.Single().Description}");
        Assert.Null(changed.Cost);
        session.Undo();
        Assert.Equal(before, session.Edited.Text);
        page.Press(KeyName.Delete);
        Assert.DoesNotContain(session.Document.Scenario.Remedies, r => r.Name == "better weld");
        page.Run.EndNow();
    }

    [Fact]
    public void A_form_opened_and_accepted_changes_nothing()
    {
        using Session session = Opened.Session("desert-crossing");
        string before = session.Edited.Text;
        using var page = new RemediesPage(session, new NoDialogs { Filling = _ => { } });
        for (int i = 0; i < session.Document.Scenario.Remedies.Length; i++)
        {
            page.Press(KeyName.Enter);
            page.Press(KeyName.Down);
        }

        Assert.Equal(before, session.Edited.Text);
        page.Run.EndNow();
    }

    [Theory]
    [InlineData("wall thickness", "60", "must not be above half")]
    [InlineData("wall thickness", "thick", "filled in")]
    [InlineData("wall thickness", "", "filled in")]
    public void A_change_that_cannot_be_is_refused_with_the_reason(string input, string becomes, string reason)
    {
        using Session session = Opened.Session("broken-housing");
        Form? seen = null;
        using var page = new RemediesPage(session, new NoDialogs
        {
            Filling = form => Fill(seen = form, ("name", "new"), ("input", input), ("  value", becomes)),
        });
        page.Press('a');
        Assert.Contains(reason, seen!.FirstRefusal, StringComparison.Ordinal);
        Assert.Equal(0, session.Edition);
    }

    private static void Fill(Form form, params (string Label, string Text)[] texts)
    {
        foreach ((string label, string text) in texts)
        {
            form.Set(form.Fields.ToList().FindIndex(f => f.Label == label), text);
        }
    }
}
