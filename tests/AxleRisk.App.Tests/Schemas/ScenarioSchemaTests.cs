using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AxleRisk.App.Schemas;
using AxleRisk.App.Tests.Files;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using Xunit;

namespace AxleRisk.App.Tests.Schemas;

/// <summary>The schema of the scenario file takes every example and refuses what is plainly wrong.</summary>
public class ScenarioSchemaTests
{
    public static TheoryData<string> Files =>
    [
        .. Repository.Scenarios.Concat(Directory.GetFiles(Repository.PathTo("docs", "tutorial"), "*.toml"))
            .Select(p => Path.GetRelativePath(Repository.PathTo(), p)),
    ];

    public static TheoryData<string> Names => [.. SchemaBook.Names];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_scenario_that_comes_with_the_program_is_taken(string file) =>
        Assert.Empty(Checked.Faults("scenario", Toml.ToJson(File.ReadAllText(Repository.PathTo(file)))));

    [Fact]
    public void Every_whole_example_of_the_documents_is_taken()
    {
        string[] examples =
        [
            .. Directory.GetFiles(Repository.PathTo("docs"), "*.md", SearchOption.AllDirectories)
                .SelectMany(p => Regex.Matches(File.ReadAllText(p), "```toml\n((?:#.*\n)*title = .*?)```", RegexOptions.Singleline))
                .Select(m => m.Groups[1].Value).Where(e => e.Contains("[vehicle]")),
        ];
        Assert.NotEmpty(examples);
        Assert.All(examples, e => Assert.Empty(Checked.Faults("scenario", Toml.ToJson(e))));
    }

    // The meta-schema of draft 2020-12, as the library carries it.
    [Theory]
    [MemberData(nameof(Names))]
    public void Every_schema_is_one(string name) => Assert.True(Checked.IsSchema(name));

    [Theory]
    [InlineData("tyre_n_per_mm = 300", "tyre_n_per_mm = 300\ntire_n_per_mm = 300")]
    [InlineData("tyre_n_per_mm = 300", "")]
    [InlineData("tyre_n_per_mm = 300", "tyre_n_per_mm = \"300\"")]
    [InlineData("tyre_n_per_mm = 300", "tyre_n_per_mm = 0")]
    [InlineData("tyre_n_per_mm = 300", "tyre_n_per_mm = inf")]
    [InlineData("tyre_n_per_mm = 300", "tyre_n_per_mm = 2026-01-01")]
    [InlineData("required_km = 50000", "required_km = -1")]
    [InlineData("required_km = 50000", "")]
    [InlineData("[detail]", "[details]")]
    [InlineData("category = \"E\"", "category = \"E9\"")]
    [InlineData("share = 0.75", "share = 1.75")]
    [InlineData("road_class = \"C\"", "road_class = \"c\"")]
    [InlineData("sd_ln = 0.10", "sd = 0.10")]
    [InlineData("knowledge = \"unknown\"", "knowledge = \"no\"")]
    public void What_is_wrong_is_refused(string right, string wrong)
    {
        JsonNode document = Toml.ToJson(Good.With(right, wrong));
        Assert.Empty(Checked.Faults("scenario", Toml.ToJson(Good.Text)));
        Assert.NotEmpty(Checked.Faults("scenario", document));
    }

    [Fact]
    public void Every_key_has_a_name_in_plain_words_and_a_meaning()
    {
        KeyFormat[] keys =
        [
            .. ScenarioFormat.All.Concat(DistributionFormat.Families.Select(DistributionFormat.Of)).SelectMany(t => t.Keys),
        ];
        Assert.True(keys.Length > 100);
        Assert.All(keys, k => Assert.True(k.Label.Length > 0 && k.Meaning.Length > 0 && k.Otherwise.Length > 0, k.Key));
    }

    // Every quantity of the model stands in one table of the format: that of its section.
    [Fact]
    public void Every_quantity_is_described_once()
    {
        string[] described =
        [
            .. ScenarioFormat.All.Where(t => !t.Path.StartsWith(TripQuantities.LegSection, StringComparison.Ordinal))
                .SelectMany(t => t.Keys.Where(k => k.Quantity is not null).Select(k => $"{t.Path} {k.Key} {k.Unit}")),
        ];
        Assert.Equal(
            Quantities.All.Append(TripQuantities.AlreadyDriven).Select(q => $"{q.Section} {q.Key} {q.Unit}").Order(), described.Order());
    }
}
