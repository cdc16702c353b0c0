using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>Failure between two states of use, for every subset of the chances that is known.</summary>
public sealed class ChanceSubsetsTests
{
    private static readonly LifeModel Model = new(CertainModes.Scenario);

    // Nothing known: 1 - S(after) / S(before), S the product over the three modes.
    [Theory]
    [InlineData(0.3, 0.5, 0.2, 0.3, 0.2, 0.4)]
    [InlineData(0.8, 1.1, 0.9, 1.0, 0.6, 0.6)]
    [InlineData(0.5, 0.5, 0.4, 1.5, 0.5, 0.9)]
    public void Without_knowledge_it_is_the_ratio_of_the_survivals(
        double damage, double damageAfter, double yields, double yieldsAfter, double lives, double livesAfter)
    {
        double expected = 1 - (CertainModes.Survival(damageAfter, yieldsAfter, livesAfter) / CertainModes.Survival(damage, yields, lives));
        Assert.InRange(expected, 0.01, 0.99);
        Assert.Equal(expected, Fill([damage, yields, lives], [damageAfter, yieldsAfter, livesAfter], [1, 1, 1])[0], 1e-7);
    }

    // All known: it fails between where some limit lies between and none before.
    [Theory]
    [InlineData(2, 2, 2, 0)]
    [InlineData(0.4, 2, 2, 1)]
    [InlineData(2, 0.4, 2, 1)]
    [InlineData(2, 2, 0.4, 1)]
    [InlineData(0.2, 2, 0.4, 0)]
    public void With_all_known_the_limits_decide(double damage, double yields, double lives, double fails) =>
        Assert.Equal(fails, Fill([0.3, 0.3, 0.3], [0.5, 0.5, 0.5], [damage, yields, lives])[^1]);

    private static double[] Fill(double[] before, double[] after, double[] limits)
    {
        var subsets = new ChanceSubsets(Model);
        Assert.Equal(16, subsets.Count);
        double[][] values = Model.CreateColumns(1);
        foreach (Factor factor in Model.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Median[0];
        }

        var fails = new double[subsets.Count];
        subsets.Fill(before, after, limits, values, 0, fails);
        return fails;
    }
}
