using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>One combination of the states of the discrete factors.</summary>
/// <param name="Name">The combination; empty where nothing is held. Random streams go by it.</param>
/// <param name="Label">The combination in plain words.</param>
/// <param name="Probability">Its probability.</param>
/// <param name="Units">The columns held, with a unit value that maps to the state.</param>
internal sealed record DiscreteState(string Name, string Label, double Probability, IReadOnlyList<(int Column, double Unit)> Units)
{
    /// <summary>Combinations at most; discrete factors that would make more are sampled like the others.</summary>
    public const int MostCombinations = 64;

    /// <summary>Nothing held: discrete factors are sampled.</summary>
    public static DiscreteState None { get; } = new("", "", 1, []);

    /// <summary>
    /// All combinations of the discrete factors that are independent of the others. (A measured sample is not discrete here:
    /// its quantile interpolates between the values.)
    /// </summary>
    public static IReadOnlyList<DiscreteState> Of(FactorSet factors)
    {
        List<DiscreteState> states = [None];
        foreach (Factor factor in factors.Groups.Where(g => g.Length == 1).Select(g => g[0]).OrderBy(f => f.FirstColumn))
        {
            if (factor.Distribution is NumberChoice choice && states.Count * choice.Values.Length <= MostCombinations)
            {
                states = [.. states.SelectMany(state => choice.Values.Select(value => state.With(factor, choice, value)))];
            }
        }

        return states;
    }

    private DiscreteState With(Factor factor, NumberChoice choice, double value)
    {
        double probability = choice.Density(value);

        // The middle of the interval of unit values that map to this state.
        double unit = choice.Cumulative(value) - (probability / 2);
        string Joined(string before, string name) => $"{before}{(before.Length == 0 ? "" : ", ")}{name} {factor.Show(value)}";
        return new DiscreteState(
            Joined(Name, factor.Name), Joined(Label, factor.Label), Probability * probability, [.. Units, (factor.FirstColumn, unit)]);
    }
}
