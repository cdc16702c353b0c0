using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>
/// The data of the light truck come from a truth (AxleRisk.Benchmarks, <c>light-truck write</c>), which the scenario does not know.
/// </summary>
public class LightTruckTests
{
    // As the generator prints them.
    private const double StressFactor = 0.9103454241401413, DamageRatio = 0.9211136592999646, WallMean = 6.45, WallSpread = 0.22;

    private static readonly Scenario Stated = Read("light-truck");

    [Fact]
    public void The_band_after_learning_holds_the_truth_and_is_at_most_half_as_wide_as_that_of_a_Weibull()
    {
        LearnResult learned = LearnAnalysis.Run(
            new LifeModel(Stated), new LearnQuestion([Stated.RequiredKm]), new StudySettings(262_144, 1, "sobol"), new RunOptions());
        int required = learned.Curve.Select(c => c.DistanceKm).ToList().IndexOf(Stated.RequiredKm);
        (Interval after, Interval weibull) = (learned.Curve[required].After, learned.Data.OfWeibull[required]);
        double truth = Probability(Truth());
        Assert.InRange(truth, after.Low, after.High);
        Assert.InRange((after.High - after.Low) / (weibull.High - weibull.Low), 0.01, 0.5);
        Assert.False(learned.Misfit.IsMisfit);

        // What is shipped as learned is learned from these data, and says so of the same distance.
        Scenario kept = Read("light-truck-learned");
        Assert.Equal([Stated.Field.Digest, Stated.Gauges.Digest], kept.Learned!.Data);
        Assert.InRange(Probability(kept) / after.Estimate, 0.93, 1.07);
    }

    [Fact]
    public void The_story_tells_the_truth()
    {
        string story = File.ReadAllText(Repository.PathTo("docs", "stories", "light-truck.md"));
        Assert.Contains($"stress factor {StressFactor:0.000}, damage ratio {DamageRatio:0.000}, weld category F",
            story, StringComparison.Ordinal);
        Assert.Contains($"{100 * Probability(Truth()):0.0} % of all trucks", story, StringComparison.Ordinal);
    }

    private static Scenario Truth() => Stated with
    {
        Inputs =
        [
            .. Stated.Inputs.Select(i => i with
            {
                Value = i.Quantity == Quantities.StressFactor ? new Value.Certain(StressFactor)
                    : i.Quantity == Quantities.DamageRatio ? new Value.Certain(DamageRatio)
                    : i.Quantity == Quantities.Wall ? new Value.Uncertain(new Normal(WallMean, WallSpread), Knowledge.Varies) : i.Value,
            }),
        ],
        Detail = new Detail(Stated.Detail.Catalogue, ["F"], [1]),
        Field = FieldData.None,
        Gauges = GaugeData.None,
    };

    private static double Probability(Scenario scenario) => RiskAnalysis.Run(
        new LifeModel(scenario), new StudySettings(32_768, 1, "sobol"), new RiskQuestion { DistancesKm = [scenario.RequiredKm] },
        new RunOptions()).Result.AtRequired.Probability.Estimate;

    private static Scenario Read(string name) => ScenarioReader.ReadFile(Repository.PathTo("scenarios", name + ".toml")).Scenario;
}
