using System.Text.Json.Nodes;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class CombineTests
{
    [Fact]
    public void The_combine_document_has_the_keys_other_programs_rely_on()
    {
        JsonNode document = JsonNode.Parse(Cli.Run("combine", Cli.Shipped("broken-housing"), "--json", "-n", "40000", "--seed", "5").Out)!;
        Assert.Equal(5, (int)document["seed"]!);
        Assert.InRange((int)document["evaluations"]!, 30_000, 40_000);
        Assert.Equal(10_000, (int)document["searched"]!["rows"]!);
        Assert.NotEmpty(document["combinations"]!.AsArray());
        double last = 1;
        foreach (JsonNode? c in document["combinations"]!.AsArray())
        {
            Assert.InRange(c!["members"]!.AsArray().Count, 1, 4);
            double p = (double)c["probability"]!["estimate"]!;
            Assert.InRange(p, (double)c["probability"]!["low"]!, (double)c["probability"]!["high"]!);
            Assert.InRange(p, 0, last);
            last = p;
            Assert.Equal((double)c["coverage"]!["estimate"]!, (double)c["lift"]!["estimate"]! * (double)c["likelihood"]!, 1e-9);
        }

        Assert.All(document["pairs"]!.AsArray(), p => Assert.Equal(
            ["first", "second", "probability", "multiplied", "ratio", "likelihood", "rows", "notable", "correlated"],
                p!.AsObject().Select(x => x.Key)));
        Assert.Equal(8 * 7 / 2, document["interactions"]!.AsArray().Count);
        Assert.Equal(["first", "second", "second_order", "shapley_interaction"], document["interactions"]![0]!.AsObject()
            .Select(x => x.Key));
        Assert.Contains("W1", document["ranges"]!.AsArray().Where(r => (string)r!["factor"]! == "detail.category")
            .Select(r => (string)r!["limit"]!));
    }

    [Fact]
    public void The_worst_combinations_are_told_as_sentences()
    {
        Scenario scenario = ScenarioReader.ReadFile(Cli.Shipped("broken-housing")).Scenario;
        FactorSet factors = FactorSet.Of(scenario);
        AdverseRange Range(string factor, RangePart part, double limit) => new(factors.Find(factor)!, factor, part, limit, 0.2);
        var combination = new Combination
        {
            Members =
            [
                Range("vehicle.payload_kg", RangePart.Above, 620.4), Range("detail.category", RangePart.State, 3),
                Range("axle.wheel_offset_mm", RangePart.State, 20),
            ],
            Probability = new Interval(0.31, 0.29, 0.334),
            Lift = new Interval(4.2, 4, 4.4),
            Coverage = new Interval(0.17, 0.16, 0.18),
            Likelihood = 0.0405,
            Multiplied = new Interval(0.2, 0.19, 0.21),
            ExceedsParts = true,
            Rows = 100,
            EffectiveFailures = 50,
        };
        Assert.Equal(
            "payload above 620 kg, weld category W1 and wheel offset at 20 mm: 31 % fail (29 to 33 %; 4.2 times the "
            + "average); 1 vehicle in 25 is like this; 17 % of all failures. Worse than its parts: multiplied they would give 20 %.",
            CombineText.Sentence(combination));
    }

    [Fact]
    public void A_scenario_without_factors_is_refused()
    {
        string certain = Cli.Temporary(File.ReadAllText(Cli.Shipped("benchmark-five-legs"))
            .Replace("{ distribution", "6.0 # {", StringComparison.Ordinal)
            .Replace("speed_factor = 6.0", "speed_factor = 1.0", StringComparison.Ordinal));
        (int exit, _, string error) = Cli.Run("combine", certain);
        Assert.Equal(2, exit);
        Assert.NotEmpty(error);
    }
}
