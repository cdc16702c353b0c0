using System.Text.RegularExpressions;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Screens.Pages.Remedies;
using AxleRisk.App.Tests.Commands;
using AxleRisk.App.Tests.Screens;
using AxleRisk.App.Text;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Text;

/// <summary>How distributions read. That a choice is read as state and percent, side by side: common practice, no source.</summary>
public sealed class DistributionTextTests
{
    private const string ScenarioName = "quarry-shuttle";

    [Fact]
    public void A_choice_among_numbers_reads_as_values_with_percents_and_the_others_as_before()
    {
        Assert.Equal("0 (50 %), 1 (50 %)", DistributionText.Of(new NumberChoice([1, 0], [3, 3])));
        Assert.Equal("-2.5 (33.33 %), 30 (66.67 %)", DistributionText.Of(new NumberChoice([30, -2.5], [2, 1])));
        Assert.Equal("0 (0.5 %), 25.4 (99.5 %)", DistributionText.Of(new NumberChoice([0, 25.4], [0.005, 0.995])));
        Assert.Equal("normal(mean 6, sd 0.25)", DistributionText.Of(new Normal(6, 0.25)));
        Assert.Equal("4 (20 %), 8 (80 %)", DistributionText.Of(Scaled.Of(new NumberChoice([1, 2], [1, 4]), 4)));
    }

    [Fact]
    public void A_change_to_a_choice_reads_the_same()
    {
        var value = new Value.Uncertain(new NumberChoice([0, 30], [0.4, 0.6]), Knowledge.Varies);
        Assert.Equal("= 0 (40 %), 30 (60 %)", DistributionText.Of(new Change.ToValue("axle.wheel_offset_mm", value)));
        Assert.Equal("= D (70 %), E (30 %)", DistributionText.Of(new Change.ToWord(Change.CategoryName, new(["D", "E"], [0.7, 0.3]))));
        Assert.Equal("= D", DistributionText.Of(new Change.ToWord(Change.CategoryName, WordChoice.Sure("D"))));
        Assert.Equal("x 0.8", DistributionText.Of(new Change.Times("axle.wall_mm", 0.8)));
    }

    [Fact]
    public void It_is_read_in_the_text_the_report_and_the_console_and_the_documents_for_programs_stay()
    {
        string path = Cli.Shipped(ScenarioName);
        Assert.Contains("\n  wheel offset (axle.wheel_offset_mm): 0 (40 %), 30 (60 %)\n", Cli.Run("check", path).Out, StringComparison.Ordinal);
        string csv = Path.Combine(TemporaryFolder.New(), "inputs.csv");
        Assert.Contains(
            "\"distribution\": \"choice(value_1 0, weight_1 0.4, value_2 30, weight_2 0.6)\"",
                Cli.Run("check", path, "--json", "--csv", csv).Out, StringComparison.Ordinal);
        Assert.Contains("choice(value_1 0, weight_1 0.4, value_2 30, weight_2 0.6)", File.ReadAllText(csv), StringComparison.Ordinal);

        Scenario scenario = ScenarioReader.ReadFile(path).Scenario;
        InputRow row = InputRows.Of(scenario, File.ReadAllText(path)).SelectMany(g => g.Rows).Single(r => r.Name == "axle.wheel_offset_mm");
        Assert.Equal("0 (40 %), 30 (60 %)", row.ValueText);
        Assert.Equal("0 (40 %), 30 (60 %) mm", ChangeText.Now(scenario, "axle.wheel_offset_mm"));
    }

    [Fact]
    public void A_category_reads_the_same_and_is_typed_as_before()
    {
        string path = Cli.Shipped("warranty-clinic-van");
        using var session = new Session(EditedScenario.Open(path), TimeProvider.System, HeadlessConsole.FewEvaluations);
        InputRow row = InputRows.Of(session.Document.Scenario, File.ReadAllText(path)).SelectMany(g => g.Rows)
            .Single(r => r.Kind == InputKind.Category);
        Assert.Equal("E (70 %), F (30 %)", row.ValueText);
        Assert.Contains("\n  weld category (detail.category): E (70 %), F (30 %)\n", Cli.Run("check", path).Out, StringComparison.Ordinal);
        var form = new CategoryForm(session, row);
        Assert.Equal(("E 0.7; F 0.3", true), (form.Fields[1].Text, form.IsRight));
        Assert.NotNull(form.Edit);
    }

    [Fact]
    public void No_parameter_with_a_number_in_its_name_is_read_in_a_report()
    {
        string folder = Path.Combine(TemporaryFolder.New(), "out");
        string scenario = FewFactors.With("");
        File.WriteAllText(scenario, File.ReadAllText(scenario)
            .Replace("\nwall_mm", "\nwheel_offset_mm = { distribution = \"choice\", values = [0, 30], weights = [0.4, 0.6] }\nwall_mm",
            StringComparison.Ordinal));
        Assert.Equal(0, Cli.Run("report", scenario, "-n", "100", "--out", folder).Exit);
        string report = File.ReadAllText(Path.Combine(folder, "report.md")).Replace("\\", "", StringComparison.Ordinal);
        Assert.Equal(2, Regex.Count(report, Regex.Escape("0 (40 %), 30 (60 %)"))); // the picture's text and the column
        Assert.DoesNotMatch("value_[0-9]|weight_[0-9]", report);
    }
}
