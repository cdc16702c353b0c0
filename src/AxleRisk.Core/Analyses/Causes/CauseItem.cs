using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>One line of the answer: a factor, or one leg's share of an uncertain road mix.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Factor">The factor it belongs to.</param>
/// <param name="Column">Its column of the sample.</param>
/// <param name="Distribution">Its distribution in the scenario.</param>
internal sealed record CauseItem(string Name, Factor Factor, int Column, Distribution Distribution)
{
    /// <summary>The choice, where it is one; a measured sample is continuous here, its quantile interpolates.</summary>
    public NumberChoice? Choice => Distribution as NumberChoice;

    /// <summary>The items of a model, in the order of its columns.</summary>
    public static ImmutableArray<CauseItem> Of(LifeModel model) =>
        [.. model.Factors.Factors.SelectMany(f => Of(model.Scenario, f)).Select(i =>
            i.Factor is not MixFactor && model.Factors.Learned?.MarginalOf(i.Factor) is { } learned
                ? i with { Distribution = learned } : i)];

    /// <summary>
    /// Each row's normal score, or the index of its state, from the dependent unit columns, as the factors leave them, and
    /// the factors' values.
    /// </summary>
    public void Fill(double[][] unit, double[][] values, int count, double[] to)
    {
        if (Choice is { } choice)
        {
            for (int row = 0; row < count; row++)
            {
                to[row] = choice.Values.BinarySearch(values[Column][row]);
            }
        }
        else if (Factor is MixFactor || Distribution is LearnedMarginal)
        {
            for (int row = 0; row < count; row++)
            {
                to[row] = StandardNormal.Quantile(Distribution.Cumulative(values[Column][row]));
            }
        }
        else
        {
            StandardNormal.Quantiles(unit[Column].AsSpan(0, count), to.AsSpan(0, count));
        }
    }

    /// <summary>The value of a normal score, with its digits in either tail.</summary>
    public double ValueOf(double score) =>
        score > 0 ? Distribution.UpperQuantile(StandardNormal.Upper(score)) : Distribution.Quantile(StandardNormal.Cumulative(score));

    // A Dirichlet share is a beta variate of its own and of all other concentration.
    private static IEnumerable<CauseItem> Of(Scenario scenario, Factor factor) => factor is MixFactor mix
        ? mix.ColumnNames.Select((name, i) => new CauseItem(name, mix, mix.FirstColumn + i,
            ShareOf(scenario.MixConcentration!.Value, mix.Nominal[i])))
        : [new CauseItem(factor.Name, factor, factor.FirstColumn, factor.Distribution!)];

    private static ScaledBeta ShareOf(double concentration, double share) => new(concentration * share, concentration * (1 - share));
}
