using System.Globalization;
using System.Text.RegularExpressions;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The reference page of the scenario format says what the program does.</summary>
public class FormatReferenceTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathTo("docs", "scenario-format.md"));

    private static readonly string[] Lines = Page.Split('\n');

    public static TheoryData<string> Rows => [.. Quantities.All.Select(RowOf)];

    public static TheoryData<string> Examples => [.. Regex.Matches(Page, @"`(\{ distribution = .* \})`").Select(m => m.Groups[1].Value)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_quantity_has_its_row(string row) => Assert.Contains(row, Lines);

    [Fact]
    public void Every_quantity_stands_in_the_table_of_its_section()
    {
        string section = "";
        foreach (string line in Lines)
        {
            if (Regex.Match(line, @"^## `\[+([a-z.]+)\]+`") is { Success: true } heading)
            {
                section = heading.Groups[1].Value;
            }

            if (Quantities.All.FirstOrDefault(q => RowOf(q) == line) is Quantity quantity)
            {
                Assert.Equal(quantity.Section, section);
            }
        }
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

    private static string RowOf(Quantity q)
    {
        string standard = q.Default switch
        {
            null when q.Without is { } without => $"absent: {without}",
            null => q == Quantities.Roughness ? "in place of `road_class`" : "required",
            Value.Certain { Number: double number } => $"{number.ToString(CultureInfo.InvariantCulture)} ({q.DefaultSource})",
            Value.Uncertain u => $"{u.Distribution}, {(u.Knowledge == Knowledge.Varies ? "varies" : "unknown")} ({q.DefaultSource})",
            _ => throw new InvalidOperationException(),
        };
        return $"| `{q.Key}` | {q.Label} | {(q.Unit.Length == 0 ? "-" : q.Unit)} | {q.Domain.Describe()} | {standard} | {q.Meaning} |";
    }
}
