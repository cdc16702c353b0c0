using System.Collections.Immutable;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Tables;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages.Tables;

public sealed class TableFormTests
{
    public static TheoryData<string> Shipped =>
        ["benchmark-five-legs", "broken-housing", "desert-crossing", "quarry-shuttle", "warranty-clinic-van"];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_table_that_is_opened_and_accepted_leaves_the_file_as_it_is(string scenario)
    {
        using Session session = Opened.Session(scenario);
        string before = session.Edited.Text;
        int opened = 0;
        var work = new TableWork(session, new NoDialogs
        {
            Filling = form =>
            {
                opened++;
                Assert.True(form.IsRight, $"{form.Title}: {form.FirstRefusal}");
                Assert.All(form.Fields, f => Assert.NotEmpty(f.Help));
            },
        });
        TableRow[] stated = [.. work.Rows().Where(r => r.IsStated && (r.List is null || r.Index is not null))];
        foreach (TableRow row in stated)
        {
            Assert.Null(work.Change(row));
            Assert.Equal(before, session.Edited.Text);
        }

        Assert.Equal(stated.Length, opened);
        Assert.True(opened >= 8);
    }

    [Fact]
    public void A_new_form_of_any_table_accuses_nobody_and_tells_what_is_missing_when_it_is_to_be_accepted()
    {
        using Session session = Opened.Session("warranty-clinic-van");
        List<string> wrong = [];
        var work = new TableWork(session, new NoDialogs
        {
            Filling = form =>
            {
                Assert.Null(form.FirstTold);
                if (!form.Try())
                {
                    wrong.Add(form.Title);
                    Assert.NotNull(form.FirstTold);
                }
            },
        });
        foreach (TableRow row in work.Rows().Where(r => r.Index is null && (r.List is not null || !r.IsStated)))
        {
            string before = session.Edited.Text;
            work.Add(row);
            if (session.Edited.Text != before)
            {
                session.Undo();
            }

            Assert.Equal(before, session.Edited.Text);
        }

        Assert.Contains("remedies: one more", wrong);
        Assert.DoesNotContain("legs of use: one more", wrong);
    }

    [Fact]
    public void A_leg_is_added_copied_moved_and_taken_out_and_the_shares_add_up_to_1_all_the_way()
    {
        using Session session = Opened.Session("warranty-clinic-van");
        string before = session.Edited.Text;
        Action<Form> fill = f => Fill(f, ("name", "ford"), ("share", "0.2"), ("speed", "12"));
        var page = new TablesPage(session, new NoDialogs { Filling = f => fill(f) });
        page.Choose("use.legs");
        page.Press('a');
        Assert.Equal("ford", page.Chosen.Label);
        Assert.Equal([0.28, 0.32, 0.16, 0.04, 0.2], Shares(session));
        fill = _ => { };
        page.Press('c');
        Assert.Equal("ford-2", page.Chosen.Label);
        page.Press('u');
        page.Press('u');
        Assert.Equal(["town", "trunk-road", "gravel", "ford-2", "village-track", "ford"], Legs(session).Select(l => l.Name));
        Assert.Equal(1, Shares(session).Sum(), 9);
        page.Press(KeyName.Delete);
        page.Press('d');
        Assert.Equal(["town", "trunk-road", "gravel", "ford", "village-track"], Legs(session).Select(l => l.Name));
        Assert.Equal(1, Shares(session).Sum(), 9);
        foreach (int _ in Enumerable.Range(0, 6))
        {
            session.Undo();
        }

        Assert.Equal(before, session.Edited.Text);
    }

    [Fact]
    public void Keys_that_exclude_each_other_take_each_others_place()
    {
        using Session session = Opened.Session("warranty-clinic-van");
        var work = new TableWork(session, new NoDialogs
        {
            Filling = f =>
            {
                Fill(f, ("roughness within its class", "1.2"), ("roughness", "300"));
                Assert.Equal(["-", "300", ""], new[] { "road class", "roughness", "roughness within its class" }.Select(l => Field(f, l).Text));
            },
        });
        work.Change(work.Row("use.legs[2]"));
        Leg gravel = session.Document.Scenario.Legs[2];
        Assert.Null(gravel.RoadClass);
        Assert.Equal(300, session.Document.Scenario.Find(Quantities.Roughness, 2)!.Value.Nominal);
    }

    [Fact]
    public void Another_shape_of_the_section_shows_its_own_sizes_and_takes_those_of_the_old_one_out()
    {
        using Session session = Opened.Session("benchmark-five-legs");
        var work = new TableWork(session, new NoDialogs
        {
            Filling = f =>
            {
                Assert.DoesNotContain(f.Fields, x => x.Label == "box width");
                Fill(f, ("shape", "box"));
                Assert.False(f.IsRight);
                Assert.DoesNotContain(f.Fields, x => x.Label == "outside diameter");
                Fill(f, ("box width", "90"), ("box height", "100"));
            },
        });
        Assert.Null(work.Change(work.Row("axle")));
        Scenario scenario = session.Document.Scenario;
        Assert.Equal((SectionShape.Box, 90, false), (scenario.Shape, scenario.Find(Quantities.BoxWidth)!.Value.Nominal,
            session.Edited.Text.Contains("outside_diameter_mm", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_quantity_takes_a_distribution_from_a_form_of_its_own()
    {
        using Session session = Opened.Session("warranty-clinic-van");
        NoDialogs inner = new()
        {
            Filling = f => Fill(f, ("kind", "triangular"), ("low", "40"), ("mode", "50"), ("high", "70")),
        };
        var work = new TableWork(session, new NoDialogs
        {
            Filling = f =>
            {
                f.Focused = f.Fields.ToList().IndexOf(Field(f, "speed"));
                Assert.Equal("a distribution", f.Opens);
                Assert.True(f.Open(inner));
                Assert.StartsWith("triangular", Field(f, "speed").Text, StringComparison.Ordinal);
                Assert.NotEmpty(f.Picture(26, 16));
            },
        });
        work.Change(work.Row("use.legs[0]"));
        Assert.Contains("speed_km_per_h = { distribution = \"triangular\", low = 40, mode = 50, high = 70 }\n", session.Edited.Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Correlations_evidence_explanations_and_remedies_of_the_trip_are_added_by_choices()
    {
        using Session session = Opened.Session("desert-crossing");
        Action<Form> fill = f => Fill(f, ("first input", "payload"), ("second input", "damper condition"), ("rank correlation", "0.4"));
        var work = new TableWork(session, new NoDialogs { Filling = f => fill(f) });
        Assert.Null(work.Add(work.Row("correlations")));
        fill = f => Fill(f, ("failed at", "9000"));
        Assert.Null(work.Change(work.Row("evidence")));
        fill = f => Fill(f, ("factor", "wheel offset"), ("state", "25"));
        Assert.Null(work.Add(work.Row("evidence.known")));
        fill = f => Fill(f, ("input", "wall thickness"), ("  below", "7"));
        Assert.Null(work.Add(work.Row("explanations")));
        fill = f => Fill(f, ("input", "trip speed on rocky-pass"), ("  how", "times"), ("  value", "0.5"));
        Assert.Null(work.Add(work.Row("trip.remedies")));

        Scenario scenario = session.Document.Scenario;
        Assert.Equal(("vehicle.payload_kg", "vehicle.damper_condition", 0.4),
            (scenario.Correlations[^1].First, scenario.Correlations[^1].Second, scenario.Correlations[^1].Spearman));
        Assert.Equal(9000, ((LifeEvidence.FailedAt)scenario.Evidence.Life!).Km);
        Assert.Equal(25, Assert.Single(scenario.Evidence.Known).Value);
        Assert.Equal("explanation", Assert.Single(scenario.Evidence.Explanations).Name);
        Assert.Equal("trip.rocky-pass.speed_km_per_h", Assert.Single(scenario.Trip!.Remedies[^1].Changes).Input);
    }

    [Fact]
    public void What_the_reader_refuses_stands_at_its_field_and_changes_nothing()
    {
        using Session session = Opened.Session("warranty-clinic-van");
        Form? seen = null;
        var work = new TableWork(session, new NoDialogs { Filling = f => Fill(seen = f, ("share", "1.5"), ("speed", "fast")) });
        work.Change(work.Row("use.legs[0]"));
        Assert.Contains("F2", Field(seen!, "speed").Refusal, StringComparison.Ordinal);
        Fill(seen!, ("speed", "30"));
        Assert.Contains("up to 1", Field(seen!, "share").Refusal, StringComparison.Ordinal);
        Assert.Equal(0, session.Edition);
    }

    private static double[] Shares(Session session) => [.. Legs(session).Select(l => Math.Round(l.Share, 12))];

    private static ImmutableArray<Leg> Legs(Session session) => session.Document.Scenario.Legs;

    private static FormField Field(Form form, string label) => form.Fields.First(f => f.Label == label);

    private static void Fill(Form form, params (string Label, string Text)[] texts)
    {
        foreach ((string label, string text) in texts)
        {
            form.Set(form.Fields.ToList().FindIndex(f => f.Label == label), text);
        }
    }
}
