using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Tests.Commands;
using AxleRisk.App.Tests.Files;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Screens;

/// <summary>The page of the inputs as a state, without a screen.</summary>
public sealed class InputsPageTests
{
    public static TheoryData<string> Shipped => [.. Repository.Names];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_input_of_the_shipped_scenarios_is_listed_with_its_unit_and_its_default_marked(string scenario)
    {
        using Session session = Open(scenario);
        var page = new InputsPage(session, new NoDialogs());
        string text = Text(page, 120, 500);
        Assert.All(session.Document.Scenario.Inputs, input => Assert.Contains(
            text.Split('\n'), line => line.Contains(input.Quantity.Label, StringComparison.Ordinal)
                && line.Contains(input.Quantity.Key, StringComparison.Ordinal)));
        Assert.DoesNotContain("lever_arm_mm", Text(page, 80, 500), StringComparison.Ordinal); // no room: with the chosen one alone
        page.Choose("axle.lever_arm_mm");
        Assert.Contains("lever arm (axle.lever_arm_mm, mm): ", Text(page, 80, 500), StringComparison.Ordinal);
        page.Choose("title");
        string marked = Line(text, "tyre_damping_n_s_per_mm") + Line(text, "contact_length_mm");
        Assert.Equal(session.Document.Scenario.Find(Quantities.ContactLength)!.IsDefault, Line(text, "contact_length_mm")
            .Contains("default", StringComparison.Ordinal));
        Assert.Contains("N s/mm", marked, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("normal(mean 7, sd 0.0877, min 6.3, max 7.7)", "normal(7, sd 0.0877, 6.3..7.7)")]
    [InlineData("normal(mean 7, sd 0.05012531, min 6.8, max 7.2)", "normal(7, sd 0.05013, 6.8..7.2)")]
    [InlineData("beta(alpha 5, beta 2, low 0.2, high 1)", "beta(alpha 5, beta 2, 0.2..1)")]
    [InlineData("pert(low 150, mode 400, high 950)", "pert(low 150, mode 400, high 950)")]
    public void What_does_not_fit_is_told_densely_before_it_is_cut(string stated, string shown) =>
        Assert.Equal(shown, InputLines.Dense(stated));

    [Fact]
    public void A_number_edited_changes_the_scenario_and_can_be_taken_back()
    {
        using Session session = Open("warranty-clinic-van");
        var page = new InputsPage(session, new NoDialogs(answer: "90_000"));
        page.Choose("required_km");
        page.Press(KeyName.Enter);
        Assert.Equal(90_000, session.Document.Scenario.RequiredKm);
        Assert.Contains("required_km = 90_000", session.Edited.Text, StringComparison.Ordinal); // as it was typed
        Assert.True(session.Edited.IsUnsaved);
        session.Undo();
        Assert.Equal(150_000, session.Document.Scenario.RequiredKm);
        Assert.False(session.Edited.IsUnsaved);
    }

    [Theory]
    [InlineData("-5")]
    [InlineData("ten")]
    [InlineData("nan")]
    [InlineData("1e400")]
    public void A_number_that_cannot_be_is_refused_with_the_reason(string typed)
    {
        using Session session = Open("warranty-clinic-van");
        var dialogs = new NoDialogs(answer: typed);
        var page = new InputsPage(session, dialogs);
        page.Choose("required_km");
        page.Press(KeyName.Enter);
        Assert.Contains("number above 0", dialogs.Refusal, StringComparison.Ordinal);
        Assert.Equal(0, session.Edition);
    }

    [Fact]
    public void A_certain_value_becomes_a_distribution_with_its_density_drawn()
    {
        using Session session = Open("warranty-clinic-van");
        string picture = "";
        var page = new InputsPage(session, new NoDialogs
        {
            Filling = form =>
            {
                form.Set(0, "normal");
                form.Set(Field(form, "mean"), "10");
                form.Set(Field(form, "sd"), "0.5");
                picture = string.Join('\n', form.Picture(32, 16).Select(l => l.Text));
            },
        });
        page.Choose("vehicle.helper_spring_n_per_mm");
        page.Press(KeyName.Enter);
        var value = (Value.Uncertain)session.Document.Scenario.Find(Quantities.HelperSpringRate)!.Value;
        Assert.Equal("normal", value.Distribution.Family);

        // 5 % point of a normal distribution: mean - 1.6449 sd (any table of the normal distribution).
        Assert.Equal(10 - (1.6449 * 0.5), value.Distribution.Quantile(0.05), 1e-4);
        Assert.Contains("9.178", picture, StringComparison.Ordinal);
        Assert.Contains(picture, c => c is >= '\u2801' and <= '\u28FF');
    }

    [Fact]
    public void A_parameter_that_makes_no_distribution_is_refused_at_its_field()
    {
        using Session session = Open("warranty-clinic-van");
        Form? seen = null;
        var page = new InputsPage(session, new NoDialogs { Filling = form => (seen = form).Set(Field(form, "sd"), "-3") });
        page.Choose("vehicle.sprung_kg");
        page.Press(KeyName.Enter);
        Assert.NotNull(seen!.Fields[Field(seen, "sd")].Refusal);
        Assert.Null(seen.Fields[Field(seen, "mean")].Refusal);
        Assert.Equal(0, session.Edition);
    }

    [Fact]
    public void A_tolerance_becomes_a_normal_distribution_of_the_assumed_capability()
    {
        using Session session = Open("benchmark-five-legs");
        var page = new InputsPage(session, new NoDialogs
        {
            Filling = form =>
            {
                form.Set(0, "tolerance");
                foreach ((string label, string text) in new[]
                    { ("nominal", "6"), ("plus", "0.4"), ("minus", "0.4"), ("Cp assumed", "1.33"), ("outside limits", "sorted out") })
                {
                    form.Set(Field(form, label), text);
                }
            },
        });
        page.Choose("axle.wall_mm");
        page.Press(KeyName.Enter);
        var wall = (Value.Uncertain)session.Document.Scenario.Find(Quantities.Wall)!.Value;

        // Cp = (U - L) / (6 sd) (ISO 22514-2; from memory): sd = 0.8 / (6 * 1.33) = 0.10025; sorting out takes little of it.
        Assert.Equal(0.10025, wall.Distribution.StandardDeviation, 1e-3);
        Assert.Equal((5.6, 6.4), (wall.Distribution.Minimum, wall.Distribution.Maximum));
    }

    [Fact]
    public void A_tolerance_opens_with_the_spread_and_limits_that_are_stated_and_changes_nothing_by_itself()
    {
        // sd 0.30 within 6.3 and 7.7: Cp = 1.4 / (6 * 0.30) = 0.7778 (ISO 22514-2; from memory).
        using Session session = Open("warranty-clinic-van");
        string before = session.Edited.Text;
        List<string> fields = [];
        var page = new InputsPage(session, new NoDialogs
        {
            Filling = form =>
            {
                form.Set(0, "tolerance");
                fields = [.. form.Fields.Select(f => f.Text)];
            },
        });
        page.Choose("axle.wall_mm");
        page.Press(KeyName.Enter);
        Assert.Equal(["tolerance", "7.0", "0.7", "0.7", "0.77778", "", "sorted out", "varies"], fields.Select(t => t == "7" ? "7.0" : t));
        string changed = session.Edited.Text.Split('\n').Except(before.Split('\n')).Single();
        string stated = before.Split('\n').Single(l => l.StartsWith("wall_mm = {", StringComparison.Ordinal)).TrimEnd();
        Assert.StartsWith(stated, changed, StringComparison.Ordinal);
        Assert.EndsWith("tolerance 7 +0.7 -0.7, Cp 0.77778 assumed, parts outside sorted out", changed, StringComparison.Ordinal);

        // Opened again, it tells what was assumed; another kind leaves the comment.
        page.Press(KeyName.Enter);
        Assert.Equal("0.77778", fields[4]);
    }

    [Fact]
    public void The_road_mix_always_sums_to_100_percent()
    {
        using Session session = Open("warranty-clinic-van");
        var page = new InputsPage(session, new NoDialogs());
        page.Press('m');
        foreach (KeyName key in new[]
            { KeyName.Right, KeyName.Right, KeyName.Down, KeyName.Left, KeyName.Down, KeyName.Right, KeyName.Enter })
        {
            Assert.Contains("100.0 %", Line(Text(page, 80, 20), "sum"), StringComparison.Ordinal);
            page.Press(key);
        }

        Assert.Equal(1, session.Document.Scenario.Legs.Sum(l => l.Share), 1e-6);
        Assert.True(session.Document.Scenario.Legs[0].Share > 0.35); // two steps up, a little back
    }

    [Fact]
    public void A_correlation_is_set_in_the_matrix_and_an_impossible_one_refused()
    {
        using Session session = Open("benchmark-five-legs");
        var page = new InputsPage(session, new NoDialogs(answer: "0.6"));
        page.Press('c');
        page.Press(KeyName.Enter);
        Assert.Equal(0.6, session.Document.Scenario.Correlations.Single().Spearman);
        var refusing = new NoDialogs(answer: "1.5");
        var other = new InputsPage(session, refusing);
        other.Press('c');
        other.Press(KeyName.Enter);
        Assert.NotNull(refusing.Refusal);
    }

    [Fact]
    public void A_stated_input_can_be_given_back_to_its_default()
    {
        using Session session = Open("warranty-clinic-van");
        var page = new InputsPage(session, new NoDialogs());
        page.Choose("vehicle.tyre_damping_n_s_per_mm");
        Assert.Equal(0.15, session.Document.Scenario.Find(Quantities.TyreDamping)!.Value.Nominal);
        page.Press(KeyName.Delete);
        Assert.Equal(0.1, session.Document.Scenario.Find(Quantities.TyreDamping)!.Value.Nominal);
    }

    [Fact]
    public void Search_goes_from_one_that_fits_to_the_next_and_round()
    {
        using Session session = Open("warranty-clinic-van");
        var page = new InputsPage(session, new NoDialogs(answer: "PAYLOAD"));
        page.Press(KeyName.Home);
        page.Press('/');
        Assert.Equal("vehicle.payload_kg", page.Chosen.Name);
        page.Press('/');
        Assert.Equal("vehicle.payload_share", page.Chosen.Name);
        var title = new InputsPage(session, new NoDialogs(answer: "weld det"));
        title.Press('/');
        Assert.Equal("detail.catalogue", title.Chosen.Name);
        var none = new InputsPage(session, new NoDialogs(answer: "nowhere"));
        string before = none.Chosen.Name;
        none.Press('/');
        Assert.Equal(before, none.Chosen.Name);
        Assert.Contains("Nothing here with \"nowhere\"", none.Status.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Left_and_right_go_from_group_to_group()
    {
        using Session session = Open("warranty-clinic-van");
        var page = new InputsPage(session, new NoDialogs());
        page.Press(KeyName.Home);
        page.Press(KeyName.Right);
        Assert.StartsWith("vehicle.", page.Chosen.Name, StringComparison.Ordinal);
        page.Press(KeyName.Right);
        Assert.StartsWith("axle.", page.Chosen.Name, StringComparison.Ordinal);
        page.Press(KeyName.Down);
        string first = page.Chosen.Name;
        page.Press(KeyName.Left);
        Assert.StartsWith("axle.", page.Chosen.Name, StringComparison.Ordinal);
        Assert.NotEqual(first, page.Chosen.Name);
        page.Press(KeyName.Left);
        page.Press(KeyName.Left);
        page.Press(KeyName.Left);
        Assert.Equal("title", page.Chosen.Name);
        for (int i = 0; i < 30; i++)
        {
            page.Press(KeyName.Right);
        }

        string last = page.Chosen.Name;
        page.Press(KeyName.Right);
        Assert.Equal(last, page.Chosen.Name);
    }

    [Fact]
    public void A_note_is_kept_as_the_comment_of_the_value_and_shown()
    {
        using Session session = Open("warranty-clinic-van");
        string before = session.Edited.Text;
        var page = new InputsPage(session, new NoDialogs(answer: "weighed on 3 May"));
        page.Choose("legs.gravel.speed_km_per_h");
        page.Press('n');
        string[] changed = [.. session.Edited.Text.Split('\n').Except(before.Split('\n'))];
        Assert.EndsWith("# weighed on 3 May", Assert.Single(changed), StringComparison.Ordinal);
        Assert.StartsWith("speed_km_per_h = ", changed[0], StringComparison.Ordinal);
        Assert.Contains("Note: weighed on 3 May", Text(page, 80, 40), StringComparison.Ordinal);
        Assert.Equal(0, session.State);
        session.Undo();
        Assert.Equal(before, session.Edited.Text);
        Assert.DoesNotContain("Note: weighed", Text(page, 80, 40), StringComparison.Ordinal);
    }

    private static Session Open(string scenario) =>
        new(EditedScenario.Open(Cli.Shipped(scenario)), TimeProvider.System, HeadlessConsole.FewEvaluations);

    private static int Field(Form form, string label) => form.Fields.ToList().FindIndex(f => f.Label == label);

    private static string Text(Page page, int width, int height) => string.Join('\n', page.Lines(width, height).Select(l => l.Text));

    private static string Line(string text, string part) => text.Split('\n').First(l => l.Contains(part, StringComparison.Ordinal));
}
