using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Measurements;

/// <summary>
/// An unknown factor held at values that stand for all that is known of it, what was learned included; whatever depends on it follows.
/// </summary>
internal sealed class HeldFactor
{
    private readonly ImmutableArray<double> at;
    private readonly Distribution marginal;

    /// <summary>Holds a factor.</summary>
    /// <param name="factor">The factor; it <see cref="FactorSet.CanBeGiven"/>.</param>
    /// <param name="of">The factors it is one of.</param>
    public HeldFactor(Factor factor, FactorSet of)
    {
        Factor = factor;
        marginal = of.IsLearned(factor) ? of.Learned!.MarginalOf(factor) : factor.Distribution!;
        if (factor.Distribution is NumberChoice choice)
        {
            double[] weights = of.IsLearned(factor) ? of.Learned!.WeightsOf(factor.Name, choice.Values.Length) : [.. choice.Weights];
            int[] possible = [.. Enumerable.Range(0, weights.Length).Where(k => weights[k] > 0)];
            Weights = [.. possible.Select(k => weights[k])];
            Units = [.. possible.Select(k => choice.Weights.Take(k).Sum() + (choice.Weights[k] / 2))];
            at = [.. possible.Select(k => (double)k)];
            return;
        }

        Units = [.. Enumerable.Range(0, InformationValue.Nodes).Select(i => StandardNormal.Cumulative(InformationValue.Score(i)))];
        at = [.. Units.Select((u, i) => marginal is LearnedMarginal learned ? learned.ScoreAt(u) : InformationValue.Score(i))];
    }

    /// <summary>The factor.</summary>
    public Factor Factor { get; }

    /// <summary>The units of what is known of it, by node or possible state.</summary>
    public ImmutableArray<double> Units { get; }

    /// <summary>Of a choice the probabilities of its possible states; empty for a continuous factor.</summary>
    public ImmutableArray<double> Weights { get; } = [];

    /// <summary>The factors of a scenario given its value at a node: its own where they have nothing to do with it.</summary>
    public FactorSet Given(FactorSet of, int node) => of.Find(Factor.Name) is { } own ? of.Given(own, at[node]) : of;

    /// <summary>Its value at a score of what is known of it.</summary>
    public double ValueOf(double z) => z < 0
        ? marginal.Quantile(StandardNormal.Cumulative(z)) : marginal.UpperQuantile(StandardNormal.Upper(z));
}
