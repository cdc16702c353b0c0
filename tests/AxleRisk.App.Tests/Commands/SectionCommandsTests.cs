using System.Text.Json.Nodes;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Tests.Files;
using AxleRisk.App.Tests.Schemas;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The documented axle of two checked sections through the commands, and its inputs in the console.</summary>
public class SectionCommandsTests
{
    private static readonly string Path = Repository.PathTo("docs", "tutorial", "two-sections.toml");
    private static readonly string Text = File.ReadAllText(Path);

    private static readonly string Found = Text.Replace(
        "failed_between_km", "cracked_at = \"seat\"\nfailed_between_km", StringComparison.Ordinal);

    [Theory]
    [InlineData("check")]
    [InlineData("base")]
    [InlineData("risk", "-n", "4096")]
    [InlineData("rank", "-n", "8192")]
    [InlineData("combine", "-n", "8192")]
    [InlineData("causes", "-n", "8192")]
    [InlineData("remedies", "-n", "4096")]
    [InlineData("sweep", "-n", "1024", "--input", "sections.seat.wall_mm=6..9:3")]
    [InlineData("sweep", "-n", "1024", "--input", "sections.seat.category=E..F")]
    public void Every_command_answers_as_its_schema_says(string command, params string[] options)
    {
        (int exit, string text, string error) = Cli.Run([command, Path, .. options, "--json"]);
        Assert.True(exit == 0, error);
        Assert.Empty(Checked.Faults(command, JsonNode.Parse(text)!));
    }

    [Fact]
    public void Answers_name_the_sections()
    {
        Assert.Contains("fatigue at seat", Cli.Run("risk", Path, "-n", "4096").Out, StringComparison.Ordinal);
        Assert.Contains("the axle's first section", Cli.Run("base", Path).Out, StringComparison.Ordinal);
        JsonNode risk = JsonNode.Parse(Cli.Run("risk", Path, "-n", "4096", "--json").Out)!;
        Assert.Equal(["fatigue", "sections.seat"], risk["modes"]!.AsArray().Select(m => m!["mode"]!.GetValue<string>()));
        string found = Cli.Temporary(Found);
        JsonNode causes = JsonNode.Parse(Cli.Run("causes", found, "-n", "8192", "--json").Out)!;
        Assert.Equal("seat", causes["evidence"]!["cracked_at"]!.GetValue<string>());
        Assert.Equal([0.0, 1.0], causes["modes"]!.AsArray().Select(m => m!["failed"]!["estimate"]!.GetValue<double>()));
    }

    [Fact]
    public void The_console_lists_its_inputs_in_a_group_of_its_own_and_edits_them_there()
    {
        Scenario scenario = ScenarioReader.Parse(Text, "a.toml").Scenario;
        InputGroup group = InputRows.Of(scenario, Text).Single(g => g.Title == "Section: seat");
        Assert.All(group.Rows, r => Assert.StartsWith("sections.seat.", r.Name, StringComparison.Ordinal));
        Assert.Equal(scenario.Inputs.Count(i => i.Section == "seat"), group.Rows.Count(r => r.Quantity is not null));
        InputRow arm = group.Rows.Single(r => r.Name == "sections.seat.lever_arm_mm");
        Assert.Equal("260", arm.ValueText);
        string moved = ScenarioEditor.Apply(Text, ScenarioEdit.Set(arm.Path, TomlValue.Of(280.0)));
        Scenario changed = ScenarioReader.Parse(moved, "a.toml").Scenario;
        Assert.Equal(280, changed.Find(arm.Quantity!, changed.Sections[0])!.Value.Nominal);
        Assert.Equal(scenario.Find(Quantities.LeverArm)!.Value, changed.Find(Quantities.LeverArm)!.Value);
        ScenarioEdit weld = ScenarioEdits.Detail("sections.seat.category", "IIW", [("FAT 71", 1)], Knowledge.Unknown);
        string other = Text.Replace(", \"sections.seat.category\" = \"E\"", "", StringComparison.Ordinal);
        changed = ScenarioReader.Parse(ScenarioEditor.Apply(other, weld), "a.toml").Scenario;
        Assert.Equal(("IIW", "FAT 71"), (changed.Sections[0].Detail.Catalogue, changed.Sections[0].Detail.Category.Only));
        Assert.Equal("DNV-RP-C203", changed.Detail.Catalogue);
    }

    [Fact]
    public void Another_life_takes_the_crack_away_that_went_with_it()
    {
        Evidence Of(LifeEvidence? life) =>
            ScenarioReader.Parse(ScenarioEditor.Apply(Found, ScenarioEdits.Life(life)), "a.toml").Scenario.Evidence;
        Assert.Equal("seat", Of(new LifeEvidence.FailedAt(50_000)).CrackedAt);
        Assert.Null(Of(new LifeEvidence.Survived(50_000)).CrackedAt);
        Assert.Null(Of(null).CrackedAt);
    }
}
