using System.Text.RegularExpressions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Evidence and explanations, right and wrong. The good text ends at line 30, so added text begins at line 31.</summary>
public class EvidenceTests
{
    private const string Choice = "wall_mm = { distribution = \"choice\", values = [5, 6], weights = [0.4, 0.6] }";

    [Fact]
    public void A_file_without_evidence_has_none()
    {
        Evidence evidence = Good.Parse(Good.Text).Scenario.Evidence;
        Assert.True(evidence.IsEmpty);
        Assert.Empty(evidence.Explanations);
    }

    public static TheoryData<string, LifeEvidence> Lives { get; } = new()
    {
        { "failed_at_km = 62000", new LifeEvidence.FailedAt(62_000) },
        { "failed_between_km = [0, 64000.5]", new LifeEvidence.FailedBetween(0, 64_000.5) },
        { "survived_km = 1e5", new LifeEvidence.Survived(100_000) },
    };

    [Theory]
    [MemberData(nameof(Lives))]
    public void The_life_is_read(string line, LifeEvidence expected) =>
        Assert.Equal(expected, Good.Parse($"{Good.Text}[evidence]\n{line}\n").Scenario.Evidence.Life);

    [Fact]
    public void Measurements_and_states_are_read()
    {
        string text = Good.With("wall_mm = 6", Choice)
            .Replace("category = \"E\"", "category = { distribution = \"choice\", values = [\"E\", \"F3\"], weights = [0.5, 0.5] }",
                StringComparison.Ordinal);
        Evidence evidence = Good.Parse(text + """
            [[evidence.measured]]
            factor = "vehicle.sprung_kg"
            value = 612
            sd = 5
            [[evidence.known]]
            factor = "detail.category"
            state = "F3"
            [[evidence.known]]
            factor = "axle.wall_mm"
            state = 5
            """).Scenario.Evidence;
        Assert.Equal([new Measurement("vehicle.sprung_kg", 612, 5)], evidence.Measured);
        Assert.Equal([new KnownState("detail.category", 1), new KnownState("axle.wall_mm", 5)], evidence.Known);
    }

    [Fact]
    public void Explanations_are_read()
    {
        string text = Good.With("[[use.legs]]\nname = \"road\"", "[use]\nmix_concentration = 30\n[[use.legs]]\nname = \"road\"")
            .Replace("wall_mm = 6", Choice, StringComparison.Ordinal);
        Explanation explanation = Assert.Single(Good.Parse(text + """
            [[explanations]]
            name = "heavy, thin and rough"
            prior = 0.2
            when = { "vehicle.sprung_kg" = { above = 700, below = 900 }, "axle.wall_mm" = [5], "legs.gravel.share" = { above = 0.3 } }
            """).Scenario.Evidence.Explanations);
        Assert.Equal(0.2, explanation.Prior);
        Assert.Equal(["vehicle.sprung_kg", "axle.wall_mm", "legs.gravel.share"], explanation.When.Select(c => c.Column));
        Assert.True(explanation.When[0].Holds(800) && !explanation.When[0].Holds(900) && !explanation.When[0].Holds(700));
        Assert.True(explanation.When[1].Holds(5) && !explanation.When[1].Holds(6));
        Assert.True(explanation.When[2].Holds(0.9) && !explanation.When[2].Holds(0.1));
    }

    [Fact]
    public void What_would_have_been_without_an_explanation_is_read()
    {
        Evidence evidence = Good.Parse(Good.Text + """
            [evidence]
            failed_at_km = 60000
            would_have_passed_km = 90000
            [[explanations]]
            name = "heavy"
            when = { "vehicle.sprung_kg" = { above = 700 } }
            instead = { vehicle.sprung_kg = { times = 0.8 } }
            """).Scenario.Evidence;
        Assert.Equal(90_000, evidence.WouldHavePassedKm);
        Assert.Equal([new Change.Times("vehicle.sprung_kg", 0.8)], Assert.Single(evidence.Explanations).Instead);
    }

    private const string Heavy = "[[explanations]]\nname = \"x\"\nwhen = { \"vehicle.sprung_kg\" = { above = 700 } }\ninstead = ";

    [Theory]
    [InlineData(Heavy + "{}", "a.toml(34,11): explanations.instead must be a table of inputs and what they would have been, such as { \"axle.wall_mm\" = 6 }")]
    [InlineData(Heavy + "{ \"axle.wall_mm\" = 6 }",
        "a.toml(34,11): explanations.instead speaks of axle.wall_mm, of which explanations.when says nothing; it may speak of vehicle.sprung_kg")]
    [InlineData(Heavy + "{ \"vehicle.sprung_kg\" = 800 }",
        "a.toml(34,11): explanations.instead: with vehicle.sprung_kg = 800 the explanation would hold all the same")]
    [InlineData("[evidence]\nfailed_at_km = 0", "a.toml(32,16): evidence.failed_at_km must be a number above 0, not 0")]
    [InlineData("[evidence]\nfailed_at_km = 5\nsurvived_km = 6",
        "a.toml(33,1): only one of evidence.failed_at_km, failed_between_km and survived_km can be true")]
    [InlineData("[evidence]\nfailed_between_km = [7, 6]",
        "a.toml(32,21): evidence.failed_between_km must be two distances, the second above the first, such as [60000, 64000]")]
    [InlineData("[evidence]\nfailed_km = 6", "a.toml(32,1): unknown key \"failed_km\" in evidence; did you mean \"failed_at_km\"?")]
    [InlineData("[[evidence]]\nfailed_at_km = 6", "a.toml(31,1): evidence must be one table under [evidence]")]
    [InlineData("[evidence]\nmeasured = 3", "a.toml(32,12): evidence.measured must be tables, each under [[evidence.measured]]")]
    [InlineData("[[evidence.measured]]\nfactor = \"vehicle.sprung_kg\"\nvalue = -1\nsd = 1",
        "a.toml(33,9): evidence.measured.value must be a number above 0, not -1")]
    [InlineData("[[evidence.measured]]\nfactor = \"vehicle.sprung_kg\"\nvalue = 1\nsd = 0",
        "a.toml(34,6): evidence.measured.sd must be a number above 0, not 0")]
    [InlineData("[[evidence.measured]]\nfactor = \"axle.wall_mm\"\nvalue = 1\nsd = 1",
        "a.toml(32,10): axle.wall_mm is certain in this scenario; evidence and explanations can speak only of what is uncertain")]
    [InlineData("[[evidence.measured]]\nfactor = \"axle.wal_mm\"\nvalue = 1\nsd = 1",
        "a.toml(32,10): there is no input \"axle.wal_mm\"; did you mean \"axle.wall_mm\"?")]
    [InlineData("[[evidence.measured]]\nfactor = \"fatigue.miner_sum\"\nvalue = 1\nsd = 1",
        "a.toml(32,10): fatigue.miner_sum shows only in the life; it cannot be measured")]
    [InlineData("[[evidence.known]]\nfactor = \"vehicle.sprung_kg\"\nstate = 3",
        "a.toml(32,10): vehicle.sprung_kg is not a choice; state it under [[evidence.measured]]")]
    [InlineData("[[evidence.known]]\nfactor = \"detail.category\"\nstate = \"E\"",
        "a.toml(32,10): detail.category is certain in this scenario; evidence and explanations can speak only of what is uncertain")]
    public void Wrong_evidence_is_named(string added, string expected) => Assert.Equal([expected], Good.ErrorsOf($"{Good.Text}{added}\n"));

    [Theory]
    [InlineData("[[evidence.known]]\nfactor = \"axle.wall_mm\"\nstate = 5.5",
        "a.toml(33,9): evidence.known.state must be 5 or 6 for axle.wall_mm, not 5.5")]
    [InlineData("[[evidence.measured]]\nfactor = \"axle.wall_mm\"\nvalue = 5\nsd = 1",
        "a.toml(32,10): axle.wall_mm is a choice; state it under [[evidence.known]]")]
    [InlineData("[[evidence.known]]\nfactor = \"axle.wall_mm\"\nstate = 5\n[[evidence.known]]\nfactor = \"axle.wall_mm\"\nstate = 6",
        "a.toml(35,10): axle.wall_mm is known twice")]
    [InlineData("[[explanations]]\nname = \"x\"\nwhen = { \"axle.wall_mm\" = 7 }",
        "a.toml(33,27): axle.wall_mm must be 5 or 6, or several of these in brackets, not 7")]
    public void Wrong_states_are_named(string added, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf($"{Good.With("wall_mm = 6", Choice)}{added}\n"));

    [Theory]
    [InlineData("name = \"nothing unusual\"",
        "a.toml(32,8): \"nothing unusual\" is always among the explanations; it means none of those named")]
    [InlineData("name = \"\"", "a.toml(32,8): explanations.name must be one line of up to 60 characters; it is empty")]
    [InlineData("name = \"x\"\nprior = 1", "a.toml(33,9): explanations.prior must be a number above 0 and below 1, not 1")]
    [InlineData("name = \"x\"\nwhy = 1", "a.toml(33,1): unknown key \"why\" in explanations; possible: name, prior, when, instead")]
    public void A_wrong_explanation_is_named(string lines, string expected) =>
        Assert.Equal([expected],
            Good.ErrorsOf($"{Good.Text}[[explanations]]\n{lines}\nwhen = {{ \"vehicle.sprung_kg\" = {{ above = 1 }} }}\n"));

    [Theory]
    [InlineData("{}", "a.toml(33,8): explanations.when must be a table of conditions, such as { \"axle.wall_mm\" = { below = 5.4 } }")]
    [InlineData("{ \"vehicle.sprung_kg\" = 3 }",
        "a.toml(33,32): vehicle.sprung_kg needs a range, such as { below = 5.4 } or { above = 5, below = 6 }, not 3")]
    [InlineData("{ \"vehicle.sprung_kg\" = { above = 3, below = 3 } }",
        "a.toml(33,32): vehicle.sprung_kg: above must be less than below, or nothing lies between")]
    [InlineData("{ \"vehicle.sprung_kg\" = { } }", "a.toml(33,32): vehicle.sprung_kg needs above, below or both")]
    [InlineData("{ \"vehicle.sprung_kg\" = { over = 3 } }",
        "a.toml(33,34): unknown key \"over\" in vehicle.sprung_kg; possible: above, below")]
    [InlineData("{ vehicle.sprung_kg = { above = 3 } }",
        "a.toml(33,10): there is no input \"vehicle\"; a name with dots stands in quotes: \"axle.wall_mm\"")]
    [InlineData("{ \"use.mix\" = { above = 3 } }",
        "a.toml(33,10): there is no input \"use.mix\"; name the share of a leg, such as \"legs.gravel.share\"")]
    public void A_wrong_condition_is_named(string when, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf($"{Good.Text}[[explanations]]\nname = \"x\"\nwhen = {when}\n"));

    [Fact]
    public void There_are_at_most_eight_explanations_each_with_its_own_name()
    {
        string One(string name) => $"[[explanations]]\nname = \"{name}\"\nwhen = {{ \"vehicle.sprung_kg\" = {{ above = 1 }} }}\n";
        Assert.Equal(8, Good.Parse(Good.Text
            + string.Concat(Enumerable.Range(0, 8).Select(i => One($"x{i}")))).Scenario.Evidence.Explanations.Length);
        Assert.Equal(
            ["a.toml(55,1): there are 9 explanations; at most 8 are possible"],
            Good.ErrorsOf(Good.Text + string.Concat(Enumerable.Range(0, 9).Select(i => One($"x{i}")))));
        Assert.Equal(["a.toml(35,8): there are two explanations with the name \"x\""], Good.ErrorsOf(Good.Text + One("x") + One("x")));
    }

    [Fact]
    public void The_example_of_the_reference_is_valid()
    {
        string page = File.ReadAllText(Repository.PathTo("docs", "scenario-format.md"));
        string example = Regex.Match(page, "```toml\n(\\[evidence\\].*?)```", RegexOptions.Singleline).Groups[1].Value;
        string whole = Regex.Match(page, "```toml\n(title = .*?)```", RegexOptions.Singleline).Groups[1].Value;
        Evidence evidence = Good.Parse(whole + example).Scenario.Evidence;
        Assert.Single(evidence.Measured);
        Assert.Single(evidence.Known);
        Assert.Equal(2, evidence.Explanations.Length);
    }
}
