using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>A value is told as the file states it, not as it was worked out.</summary>
public sealed class StatedValuesTests
{
    private const string Wall = "wall_mm = { distribution = \"normal\", mean = 6.0, sd = 0.25 }";

    [Theory]
    [InlineData("\"normal\", quantiles = [[0.05, 6.3], [0.95, 7.70]]", "normal(5 % to 95 %: 6.3 to 7.70)")]
    [InlineData("\"normal\", quantiles = [[0.005, 6.3], [0.5, 7]], min = 5", "normal(0.5 % to 50 %: 6.3 to 7, min 5)")]
    [InlineData("\"normal\", mean = 7.0, cov = 0.04, knowledge = \"unknown\", nominal = 6.9", "normal(mean 7.0, cov 0.04)")]
    [InlineData("\"lognormal\", median = 7, cov = 0.1, max = 9.50", "lognormal(median 7, cov 0.1, max 9.50)")]
    [InlineData("\"choice\", values = [5.0, 6.5], weights = [0.25, 0.75]", "5 (25 %), 6.5 (75 %)")]
    public void A_distribution_keeps_its_words_and_its_digits(string stated, string told)
    {
        Scenario scenario = Parsed(Wall, $"wall_mm = {{ distribution = {stated} }}");
        FactorSet factors = FactorSet.Of(scenario);
        Assert.Equal(told, DistributionText.Of(factors.Factors.Single(f => f.Name == "axle.wall_mm")));

        // What is worked out from it is not what was stated.
        var times = new Change.Times("axle.wall_mm", 1.1);
        Factor changed = FactorSet.Of(times.ApplyTo(scenario)).Factors.Single(f => f.Name == "axle.wall_mm");
        Assert.DoesNotContain(told, DistributionText.Of(changed), StringComparison.Ordinal);
    }

    [Fact]
    public void A_default_is_told_by_its_distribution() =>
        Assert.Equal(
            "log-uniform(low 0.5, high 2)",
            DistributionText.Of(FactorSet.Of(ScenarioReader.ReadFile(Commands.Cli.Shipped("broken-housing")).Scenario).Factors
                .First(f => f.Name.EndsWith("roughness_within_class", StringComparison.Ordinal))));

    [Fact]
    public void Who_examined_the_vehicle_and_where_evidence_comes_from_is_read()
    {
        Scenario scenario = Parsed(
            Wall,
            Wall,
            """
            [evidence]
            failed_at_km = 50000
            source = "workshop's report"

            [[evidence.measured]]
            factor = "axle.wall_mm"
            value = 5.6
            sd = 0.1
            source = "gauge, 4 readings"
            """,
            "examiner = \"A. Name\"\n");
        Assert.Equal("A. Name", scenario.Block.Examiner);
        Assert.Equal("workshop's report", scenario.Evidence.Source);
        Assert.Equal("gauge, 4 readings", Assert.Single(scenario.Evidence.Measured).Source);
    }

    [Fact]
    public void A_source_is_one_line()
    {
        ScenarioException e = Assert.Throws<ScenarioException>(
            () => Parsed(Wall, Wall, "[evidence]\nfailed_at_km = 50000\nsource = \"a\\nb\"\n"));
        Assert.Contains("evidence.source must be one line of up to 200 characters; it has a line break", e.Message, StringComparison.Ordinal);
    }

    private static Scenario Parsed(string old, string replacement, string more = "", string head = "")
    {
        string text = File.ReadAllText(Commands.Cli.Shipped("benchmark-five-legs"));
        Assert.Contains(old, text, StringComparison.Ordinal);
        return ScenarioReader.Parse(head + text.Replace(old, replacement, StringComparison.Ordinal) + "\n" + more, "case.toml").Scenario;
    }
}
