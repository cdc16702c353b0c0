using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Ranking;

public sealed class RankPlanTests
{
    // What is left to chance in a mode needs no damage of its own: Miner sum and scatter, and of every further mode its scatter.
    [Fact]
    public void The_chances_of_every_mode_are_set_apart()
    {
        static IEnumerable<string> Apart(Scenario scenario) => new RankPlan(new LifeModel(scenario)).Groups
            .Where(g => g.IsScale).SelectMany(g => g.Factors).Select(f => f.Name).Order(StringComparer.Ordinal);
        Assert.Equal(["fatigue.log10_life_scatter", "fatigue.miner_sum"], Apart(FiveLegs.Scenario));
        Assert.Equal(
            new[] { Quantities.LifeScatter, Quantities.MinerSum, Quantities.YieldScatter, Quantities.BearingScatter }
                .Select(q => ThreeModes.Scenario.Find(q)!.Name).Order(StringComparer.Ordinal),
            Apart(ThreeModes.Scenario));
    }
}
