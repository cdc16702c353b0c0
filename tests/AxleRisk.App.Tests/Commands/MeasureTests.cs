using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class MeasureTests
{
    [Fact]
    public void The_answer_fits_80_columns_and_says_what_pays()
    {
        (int exit, string output, string error) = Cli.Run("measure", Cli.Shipped("warranty-clinic-van"), "-n", "512");
        Assert.Equal((0, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        Assert.Contains("What to measure next: strain gauges on one axle", output, StringComparison.Ordinal);
        Assert.Contains("it pays by", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_document_has_the_keys_other_programs_rely_on()
    {
        JsonNode document = JsonNode.Parse(Cli.Run("measure", Cli.Shipped("warranty-clinic-van"), "-n", "512", "--json").Out)!;
        Assert.Equal("saved_cost", (string?)document["worth_is"]);
        Assert.Equal(["name", "perfect"], document["factors"]![0]!.AsObject().Select(k => k.Key));
        JsonNode gauges = document["measurements"]![0]!;
        Assert.Equal(["name", "factor", "cost", "value", "net"], gauges.AsObject().Select(k => k.Key));
        Assert.Equal((double)gauges["value"]!["estimate"]! - 6000, (double)gauges["net"]!["estimate"]!, 1e-6);
        Assert.True((double)gauges["value"]!["estimate"]! <= (double)document["factors"]![0]!["perfect"]!["estimate"]!);
    }

    [Theory]
    [InlineData("factor = \"detail.category\"\nsd = 1", "detail.category is a choice, which is known or not and has no accuracy")]
    [InlineData("factor = \"axle.wall\"\nsd = 1", "there is no input \"axle.wall\"")]
    [InlineData("factor = \"axle.wall_mm\"\nsd = 0", "measurements.sd must be a number above 0, not 0")]
    public void A_wrong_measurement_is_named(string keys, string expected)
    {
        string file = Path.Combine(TemporaryFolder.New(), "case.toml");
        File.WriteAllText(file, $"{File.ReadAllText(Cli.Shipped("warranty-clinic-van"))}\n[[measurements]]\nname = \"x\"\n{keys}\n");
        (int exit, string _, string error) = Cli.Run("measure", file);
        Assert.Equal(2, exit);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }
}
