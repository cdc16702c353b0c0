using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

public sealed class DiscreteStateTests
{
    private static readonly NumberChoice Five = new([1, 2, 3, 4, 5], [1, 2, 3, 2, 2]);

    [Fact]
    public void Without_discrete_factors_there_is_one_state()
    {
        DiscreteState state = Assert.Single(DiscreteState.Of(FactorSet.Of(FiveLegs.Scenario)));
        Assert.Equal(1, state.Probability);
        Assert.Empty(state.Units);
    }

    [Fact]
    public void Each_state_maps_to_its_value()
    {
        Scenario scenario = With(Quantities.SprungMass) with { Detail = new Detail("DNV-RP-C203", ["E", "F"], [0.25, 0.75]) };
        var factors = FactorSet.Of(scenario);
        IReadOnlyList<DiscreteState> states = DiscreteState.Of(factors);
        Assert.Equal(10, states.Count);
        Assert.Equal(1, states.Sum(s => s.Probability), 1e-12);
        Assert.All(states, state =>
        {
            IEnumerable<string> words = state.Units.Select(x =>
            {
                Factor factor = factors.Factors.Single(f => f.FirstColumn == x.Column);
                return $"{factor.Name} {factor.Show(factor.Distribution!.Quantile(x.Unit))}";
            });
            Assert.Equal(state.Name, string.Join(", ", words));
        });
    }

    [Fact]
    public void What_would_make_more_than_64_combinations_is_sampled()
    {
        Scenario scenario = With(Quantities.SprungMass, Quantities.UnsprungMass, Quantities.SpringRate);
        Assert.Equal(25, DiscreteState.Of(FactorSet.Of(scenario)).Count);
    }

    [Fact]
    public void Correlated_choices_are_sampled()
    {
        Scenario scenario = With(Quantities.SprungMass);
        string[] names = [.. new[] { Quantities.SprungMass, Quantities.SpringRate }.Select(q => scenario.Find(q)!.Name)];
        scenario = scenario with { Correlations = [new RankCorrelation(names[0], names[1], 0.5)] };
        Assert.Single(DiscreteState.Of(FactorSet.Of(scenario)));
    }

    private static Scenario With(params Quantity[] quantities) => FiveLegs.Scenario with
    {
        Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
            quantities.Contains(i.Quantity) ? i with { Value = new Value.Uncertain(Five, Knowledge.Varies) } : i)],
    };
}
