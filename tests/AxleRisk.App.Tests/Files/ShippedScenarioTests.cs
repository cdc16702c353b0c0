using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

public class ShippedScenarioTests
{
    public static TheoryData<string> Names => [.. Repository.Scenarios.Select(p => Path.GetFileName(p))];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_shipped_scenario_is_valid_and_says_that_it_is_invented(string name)
    {
        string path = Repository.PathTo("scenarios", name);
        Scenario scenario = ScenarioReader.ReadFile(path).Scenario;
        Assert.StartsWith("# Invented", File.ReadAllText(path));
        Assert.NotEmpty(scenario.About);
    }

    [Fact]
    public void There_are_seven_shipped_scenarios() => Assert.Equal(7, Repository.Scenarios.Length);

    [Fact]
    public void The_benchmark_has_its_thirteen_factors_and_no_more()
    {
        Scenario s = ScenarioReader.ReadFile(Repository.PathTo("scenarios", "benchmark-five-legs.toml")).Scenario;
        string[] factors = [.. s.Inputs.Where(i => i.Value is Value.Uncertain).Select(i => i.Name)];
        Assert.Equal(
            [
                "vehicle.sprung_kg", "vehicle.unsprung_kg", "vehicle.spring_n_per_mm", "vehicle.damper_n_s_per_mm", "vehicle.tyre_n_per_mm",
                "vehicle.contact_length_mm", "axle.lever_arm_mm", "axle.wall_mm", "use.speed_factor", "use.roughness_factor",
                "fatigue.stress_factor", "fatigue.miner_sum", "fatigue.log10_life_scatter",
            ],
            factors);
        Assert.Null(s.MixConcentration);
        Assert.Empty(s.Correlations);
        Assert.Equal([0.20, 0.30, 0.25, 0.20, 0.05], s.Legs.Select(l => Math.Round(l.Share, 12)));
        Assert.Equal([16.0, 64, 256, 1024, 4096], Enumerable.Range(0, 5).Select(i => s.Find(Quantities.Roughness, i)!.Value.Nominal));
        Assert.Equal([80.0, 60, 50, 40, 25], Enumerable.Range(0, 5).Select(i => s.Find(Quantities.Speed, i)!.Value.Nominal));
        Assert.Equal(0.29, Assert.IsType<Lognormal>(
            Assert.IsType<Value.Uncertain>(s.Find(Quantities.MinerSum)!.Value).Distribution).StandardDeviationOfLn);
    }
}
