using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

/// <summary>The edits of more than one value, on the shipped scenarios, read back.</summary>
public class ScenarioEditsTests
{
    private static readonly string Van = File.ReadAllText(Repository.PathTo("scenarios", "warranty-clinic-van.toml"));
    private static readonly string Broken = File.ReadAllText(Repository.PathTo("scenarios", "broken-housing.toml"));

    [Fact]
    public void The_road_mix_changes_only_the_shares()
    {
        string text = ScenarioEditor.Apply(Van, ScenarioEdits.RoadMix([0.2, 0.4, 0.2, 0.2]));
        Assert.Equal(Van.Replace("\nshare = 0.35", "\nshare = 0.20").Replace("\nshare = 0.05", "\nshare = 0.20"), text);
        Assert.Equal([0.2, 0.4, 0.2, 0.2], Read(text).Legs.Select(l => Math.Round(l.Share, 12)));
    }

    [Fact]
    public void A_correlation_is_added_changed_and_taken_out()
    {
        string added = ScenarioEditor.Apply(Van, ScenarioEdits.Correlation(Read(Van), "axle.wall_mm", "vehicle.tyre_n_per_mm", 0.25));
        Assert.Equal(0.25, Read(added).Correlations[1].Spearman);
        string changed = ScenarioEditor.Apply(added,
            ScenarioEdits.Correlation(Read(added), "use.speed_factor", "vehicle.payload_kg", -0.5));
        Assert.Equal(added.Replace("spearman = -0.3", "spearman = -0.5"), changed);
        string gone = ScenarioEditor.Apply(added, ScenarioEdits.Correlation(Read(added), "axle.wall_mm", "vehicle.tyre_n_per_mm", 0));
        Assert.Equal(Van, gone);
    }

    [Fact]
    public void The_detail_becomes_a_choice_and_back()
    {
        ScenarioEdit choice = ScenarioEdits.Detail("detail.category", "DNV-RP-C203", [("E", 1), ("F", 1), ("F1", 1)], Knowledge.Varies);
        string text = ScenarioEditor.Apply(Van, choice);
        Assert.Contains("values = [\"E\", \"F\", \"F1\"], weights = [0.3334, 0.3333, 0.3333], knowledge = \"varies\" }", text,
            StringComparison.Ordinal);
        Assert.Equal(["E", "F", "F1"], Read(text).Detail.Categories);
        string one = ScenarioEditor.Apply(text, ScenarioEdits.Detail("detail.category", "DNV-RP-C203", [("E", 1)], Knowledge.Unknown));
        Assert.Contains("\ncategory = \"E\"\n", one, StringComparison.Ordinal);
        Assert.Equal(["E"], Read(one).Detail.Categories);
    }

    [Fact]
    public void Evidence_replaces_evidence()
    {
        string text = ScenarioEditor.Apply(Broken, ScenarioEdits.Life(new LifeEvidence.FailedBetween(60_000, 64_000)));
        Assert.Equal(Broken.Replace("failed_at_km = 62000", "failed_between_km = [60000, 64000]"), text);
        Assert.Equal(new LifeEvidence.FailedBetween(60_000, 64_000), Read(text).Evidence.Life);
        Assert.Null(Read(ScenarioEditor.Apply(text, ScenarioEdits.Life(null))).Evidence.Life);
        Assert.Equal(new LifeEvidence.Survived(9),
            Read(ScenarioEditor.Apply(Van, ScenarioEdits.Life(new LifeEvidence.Survived(9)))).Evidence.Life);
    }

    [Fact]
    public void Remedies_are_added_and_taken_out()
    {
        TomlPath all = TomlPath.Of("remedies");
        TomlValue.Table remedy = TomlValue.TableOf(("name", TomlValue.Of("9 mm")),
            ("change", TomlValue.TableOf(("axle.wall_mm", TomlValue.Of(9)))));
        string more = ScenarioEditor.Apply(Van, ScenarioEdit.Append(all, remedy));
        int end = Van.IndexOf("\n# The promise", StringComparison.Ordinal);
        Assert.Equal(Van.Insert(end, "\n[[remedies]]\nname = \"9 mm\"\nchange = { \"axle.wall_mm\" = 9 }\n"), more);
        Assert.Equal(5, Read(more).Remedies.Length);
        Assert.Equal(Van, ScenarioEditor.Apply(more, ScenarioEdit.Remove(all.At(4))));
        Assert.Equal(8, Read(ScenarioEditor.Apply(more, ScenarioEdit.Set(TomlPath.Of("remedies[4].change.\"axle.wall_mm\""),
            TomlValue.Of(8)))).Remedies[4].Changes.OfType<Change.ToValue>().Single().Value.Nominal);
    }

    [Fact]
    public void A_leg_goes_from_a_class_to_a_roughness_and_back()
    {
        TomlPath leg = TomlPath.Of("legs.gravel"), letter = leg.Then("road_class"), roughness = leg.Then("roughness_1e_6_m3");
        string text = ScenarioEditor.Apply(Van, new ScenarioEdit("road",
            [new TomlEdit.Remove(letter), new TomlEdit.Set(roughness, TomlValue.Of(300))]));
        Assert.Equal(Van.Replace(
            "road_class = \"C\"\nspeed_km_per_h = { distribution = \"lognormal\", quantiles = [[0.05, 35], [0.95, 62]] }\n",
            "speed_km_per_h = { distribution = \"lognormal\", quantiles = [[0.05, 35], [0.95, 62]] }\nroughness_1e_6_m3 = 300\n"), text);
        Assert.Equal(300, Read(text).Find(Quantities.Roughness, 2)!.Value.Nominal);
        Assert.Equal(Van, ScenarioEditor.Apply(text, new ScenarioEdit("road",
            [new TomlEdit.Remove(roughness), new TomlEdit.Set(letter, TomlValue.Of("C"))])));
    }

    [Fact]
    public void The_new_scenario_is_valid_and_marked_as_invented()
    {
        string text = NewScenario.Text(StartingPoint.First with { Title = "Quote \" and \\" });
        Assert.Equal("Quote \" and \\", Read(text).Title);
        Assert.StartsWith("# Invented", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("# one\n[[a]]\nx = 1\n\n# two\n[[a]]\nx = 2 # last", "# two\n[[a]]\nx = 2 # last\n\n# one\n[[a]]\nx = 1\n")]
    [InlineData("[[a]]\nx = 1\n[a.b]\ny = 1\n[[a]]\nx = 2\n[c]\n", "[[a]]\nx = 2\n[[a]]\nx = 1\n[a.b]\ny = 1\n[c]\n")]
    [InlineData("a = [ { x = 1 }, # one\n  { x = 2 } ]\n", "a = [ { x = 2 }, # one\n  { x = 1 } ]\n")]
    public void Tables_of_a_list_change_places_with_the_comments_above_them(string before, string after) =>
        Assert.Equal(after, ScenarioEditor.Apply(before, new ScenarioEdit("order", [new TomlEdit.Swap(TomlPath.Of("a"), 0)])));

    [Fact]
    public void Every_answer_to_the_questions_makes_a_valid_scenario_whose_numbers_are_marked()
    {
        StartingPoint first = StartingPoint.First;
        StartingPoint[] points =
        [
            .. from purpose in StartingPurpose.All from uncertain in StartingPoint.Uncertainties from roads in StartingRoads.All
               select first with { Purpose = purpose, Uncertain = uncertain, Roads = roads, Km = purpose.Km },
            .. StartingVehicle.All.Select(v => first with { Vehicle = v }), .. StartingSection.All.Select(s => first with { Section = s }),
            .. StartingWeld.All.Select(w => first with { Weld = w, Km = 123_456 }),
        ];
        foreach (StartingPoint point in points)
        {
            string text = NewScenario.Text(point);
            Scenario scenario = Read(text);
            Assert.Equal(point.Km, scenario.RequiredKm);
            Assert.All(text.Split('\n').Where(l => l.Contains(" = ", StringComparison.Ordinal) && l.Any(char.IsDigit)
                && !l.StartsWith("catalogue", StringComparison.Ordinal) && !l.StartsWith("name", StringComparison.Ordinal)
                && !l.StartsWith("required_km", StringComparison.Ordinal)), l =>
                    Assert.EndsWith("# " + NewScenario.Mark, l, StringComparison.Ordinal));
        }

        Assert.NotNull(Read(NewScenario.Text(first)).Fleet);
        Assert.NotNull(Read(NewScenario.Text(first with { Purpose = StartingPurpose.All[1] })).Trip);
        Assert.NotNull(Read(NewScenario.Text(first with { Purpose = StartingPurpose.All[2] })).Evidence.Life);
    }

    private static Scenario Read(string text) => ScenarioReader.Parse(text, "a.toml").Scenario;
}
