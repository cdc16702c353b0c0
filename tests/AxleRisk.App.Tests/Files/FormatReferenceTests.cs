using System.Text.RegularExpressions;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Format;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The reference page of the scenario format says what the program does.</summary>
public class FormatReferenceTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathTo("docs", "scenario-format.md"));

    private static readonly string[] Lines = Page.Split('\n');

    public static TheoryData<string> Examples => [.. Regex.Matches(Page, @"`(\{ distribution = .* \})`").Select(m => m.Groups[1].Value)];

    [Fact]
    public void Every_table_of_keys_is_that_of_the_format()
    {
        var page = new MarkedPage("docs", "scenario-format.md");
        page.Check(TableOf);
        Assert.Empty(ScenarioFormat.All.Select(t => t.Path).Except(page.Names).Except(["", "trip.remedies", "trip.legs.events"]));
    }

    [Fact]
    public void Every_distribution_and_every_set_of_its_parameters_is_there()
    {
        foreach (string family in DistributionForms.Families)
        {
            Assert.Contains(Lines, l => l.StartsWith($"| `{family}` |", StringComparison.Ordinal));
        }

        foreach (DistributionForm form in DistributionForms.All)
        {
            Assert.Contains(Lines,
                l => l.StartsWith($"| `{form.Family}` | {DistributionForms.Describe(form.Family)} |", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_catalogue_is_there_with_its_categories()
    {
        foreach (string catalogue in SnCatalogue.Catalogues)
        {
            Assert.Contains($"| `{catalogue}` | {string.Join(", ", SnCatalogue.Categories(catalogue))} |", Lines);
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_of_a_distribution_is_valid(string example) =>
        Assert.IsType<Value.Uncertain>(
            Good.Parse(Good.With("wall_mm = 6", $"wall_mm = {example}"), _ => "wall_mm\n6.1\n5.9\n").Scenario.Find(Quantities.Wall)!.Value);

    [Fact]
    public void There_is_an_example_of_every_distribution() =>
        Assert.Equal(
            DistributionForms.Families.Order(),
            Examples.Select(e => Regex.Match(e.Data, "distribution = \"([a-z-]+)\"").Groups[1].Value).Distinct().Order());

    [Fact]
    public void The_whole_example_is_valid()
    {
        string example = Regex.Match(Page, "```toml\n(title = .*?)```", RegexOptions.Singleline).Groups[1].Value;
        Scenario scenario = Good.Parse(example).Scenario;
        Assert.Equal(2, scenario.Legs.Length);
        Assert.Equal(2, scenario.Remedies.Length);
    }

    [Fact]
    public void The_example_of_a_fleet_is_valid()
    {
        string example = Regex.Match(Page, @"```toml\n(\[fleet\].*?)```", RegexOptions.Singleline).Groups[1].Value;
        Assert.Equal(1_500, Good.Parse(Good.Text + example).Scenario.Fleet!.Vehicles);
    }

    [Fact]
    public void Every_example_of_a_change_is_valid()
    {
        string section = Regex.Match(Page, @"## `\[\[remedies\]\]`.*?\n## ", RegexOptions.Singleline).Value;
        string[] examples = [.. Regex.Matches(section, @"\| `("".* = .*)` \|").Select(m => m.Groups[1].Value)];
        Assert.Equal(4, examples.Length);
        foreach (string example in examples)
        {
            Assert.Single(Good.Parse($"{Good.Text}[[remedies]]\nname = 'r'\nchange = {{ {example} }}\n").Scenario.Remedies[0].Changes);
        }
    }

    private static string TableOf(string name)
    {
        TableFormat table = name switch
        {
            "top" => ScenarioFormat.Top,
            "distribution" => DistributionFormat.Common.With(DistributionFormat.Limits),
            _ => ScenarioFormat.All.First(t => t.Path == name),
        };
        return MarkedPage.Table(
            ["Key", "Called", "Unit", "Must be", "Default", "Meaning"],
            table.Keys.Where(k => k.Kind is not (KeyKind.Table or KeyKind.Tables)).Select(k => (string[])
            [
                $"`{k.Key}`", k.Label, k.Unit.Length == 0 ? "-" : k.Unit, k.Kind.MustBe, k.Standard, k.Meaning,
            ]));
    }
}
