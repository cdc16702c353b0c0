using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
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

    /// <summary>
    /// Learned, written as <c>learn --out</c> writes it, read again and decided: before the data a thicker wall is the best, after them the
    /// truck as it is. What was learned hangs together: with the same means and spreads, but each factor apart, more trucks would fail.
    /// </summary>
    [Fact]
    public void What_was_learned_changes_the_decision()
    {
        string path = Repository.PathTo("scenarios", "light-truck.toml");
        ScenarioDocument document = ScenarioReader.ReadFile(path);
        LearnedShape shape = LearnAnalysis.Run(
            new LifeModel(Stated), new LearnQuestion([Stated.RequiredKm]) { Keeps = true }, new StudySettings(65_536, 1, "sobol"),
            new RunOptions()).Shape!;
        Scenario after = ScenarioReader.ParseFor(LearnedText.Of(document.Text, Stated, shape.Learned), path).Scenario;
        (DecideResult stated, DecideResult learned) = (Decide(Stated), Decide(after));
        Assert.Equal("thicker", stated.Options[stated.Best].Name);
        Assert.Equal(DecideAnalysis.AsItIs, learned.Options[learned.Best].Name);
        Assert.True(stated.Lead.Low > 0 && learned.Lead.Low > 0);

        // The option keeps what was learned: as of a scenario with the wall written into it.
        double thicker = Probability(Remedy.Apply(after, Thicker));
        Assert.Equal(thicker, learned.Options[1].Failed.Estimate, 0.1 * thicker);
        Assert.Equal(Probability(after), learned.Options[0].Failed.Estimate, 0.1 * Probability(after));
        double apart = Decide(after with { Learned = Apart(after.Learned!) }).Options[0].Failed.Estimate;
        Assert.True(apart > 1.1 * learned.Options[0].Failed.High, $"{apart} {learned.Options[0].Failed}");
    }

    private static readonly Remedy Thicker =
        new("thicker", 240, [new Change.ToValue("axle.wall_mm", new Value.Uncertain(new Normal(7.4, 0.25), Knowledge.Varies))]);

    // Shuffled: every combination of states has the mean of all, and no two factors move together.
    private static Learned Apart(Learned learned)
    {
        int n = learned.Columns.Length;
        double[] means = [.. Enumerable.Range(0, n).Select(i => learned.States.Sum(s => s.Probability * s.Mean[i]))];
        double Square(LearnedState s, int i) => s.Factor[i].Sum(x => x * x) + (s.Mean[i] * s.Mean[i]);
        double[] triangle =
        [
            .. Enumerable.Range(0, n).SelectMany(i => Enumerable.Range(0, i + 1).Select(j =>
                i == j ? learned.States.Sum(s => s.Probability * Square(s, i)) - (means[i] * means[i]) : 0)),
        ];
        return learned with { States = [.. learned.States.Select(s => LearnedState.OfTriangle(s.States, s.Probability, means, triangle))] };
    }

    private static DecideResult Decide(Scenario scenario) => DecideAnalysis.Run(
        new LifeModel(scenario with { Remedies = [Thicker], Decision = new Decision { FailureCost = new Value.Certain(5600) } }),
        new StudySettings(16_384, 1, "sobol"), new RunOptions());

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
