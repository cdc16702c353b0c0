using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// What all vehicles share and nobody knows: the continuous unknown columns as independent standard normal coordinates, and the
/// combinations of the states of unknown choices with their probabilities.
/// </summary>
internal sealed class Unknowns
{
    /// <summary>More combinations of states are not told apart one by one.</summary>
    public const int MostCombinations = 64;

    private readonly FactorSet factors;

    /// <summary>The unknown things of a scenario.</summary>
    /// <exception cref="StudyException">Nothing is unknown; too many combinations; or an unknown input depends on one that
    /// varies.</exception>
    public Unknowns(LifeModel model)
    {
        factors = model.Factors;
        Factor[] unknown = [.. factors.Factors.Where(f => f.Knowledge == Knowledge.Unknown && !Trip.IsNameOf(f.Name))];
        if (unknown.Length == 0)
        {
            throw new StudyException(
                "nothing of the scenario is unknown, so data can teach nothing: say knowledge = \"unknown\" of what all vehicles share and nobody knows");
        }

        RefuseMixed(unknown);
        Choices = [.. unknown.Where(f => f.Distribution is NumberChoice)];
        Columns = [.. unknown.Where(f => f.Distribution is not NumberChoice).SelectMany(f =>
            f.ColumnNames.Select((_, i) => f.FirstColumn + i))];
        IsUnknown = [.. factors.ColumnNames.Select((_, c) =>
            unknown.Any(f => c >= f.FirstColumn && c < f.FirstColumn + f.ColumnNames.Length))];
        Combinations = Combine(Choices);
    }

    /// <summary>The unknown choices.</summary>
    public ImmutableArray<Factor> Choices { get; }

    /// <summary>The continuous unknown columns of the sample, one coordinate each.</summary>
    public ImmutableArray<int> Columns { get; }

    /// <summary>By column of the sample: whether it is unknown.</summary>
    public ImmutableArray<bool> IsUnknown { get; }

    /// <summary>The combinations of states: for each choice the index of its state; and how probable it is.</summary>
    public ImmutableArray<(ImmutableArray<int> States, double Probability)> Combinations { get; }

    /// <summary>
    /// The values of all unknown columns of some rows, from their coordinates; columns that vary get their medians.
    /// </summary>
    /// <param name="combination">The combination of states.</param>
    /// <param name="z">The coordinates, by coordinate and row.</param>
    /// <param name="first">The first row of <paramref name="z"/>.</param>
    /// <param name="count">Rows.</param>
    /// <param name="scores">Room for scores, by column and row.</param>
    /// <param name="values">Takes the values, by column and row.</param>
    public void Map(int combination, double[][] z, int first, int count, double[][] scores, double[][] values)
    {
        foreach (double[] column in scores)
        {
            column.AsSpan(0, count).Clear();
        }

        for (int i = 0; i < Choices.Length; i++)
        {
            scores[Choices[i].FirstColumn].AsSpan(0, count).Fill(ScoreOf(Choices[i], Combinations[combination].States[i]));
        }

        for (int i = 0; i < Columns.Length; i++)
        {
            z[i].AsSpan(first, count).CopyTo(scores[Columns[i]]);
        }

        factors.MapScores(scores, values, count);
    }

    /// <summary>The middle of the scores that map to a state of a choice.</summary>
    public static double ScoreOf(Factor choice, int state)
    {
        ImmutableArray<double> weights = ((NumberChoice)choice.Distribution!).Weights;
        return StandardNormal.Quantile(weights.Take(state).Sum() + (0.5 * weights[state]));
    }

    private void RefuseMixed(Factor[] unknown)
    {
        foreach (ImmutableArray<Factor> group in factors.Groups.Where(g => g.Any(unknown.Contains) && !g.All(unknown.Contains)))
        {
            Factor shared = group.First(unknown.Contains), own = group.First(f => !unknown.Contains(f));
            throw new StudyException(
                $"{shared.Name} is unknown and {own.Name} varies between vehicles, yet they are correlated: what all vehicles share cannot "
                + "depend on what each has; drop the correlation, or make both unknown or both vary");
        }
    }

    private static ImmutableArray<(ImmutableArray<int> States, double Probability)> Combine(ImmutableArray<Factor> choices)
    {
        List<(ImmutableArray<int> States, double Probability)> all = [([], 1)];
        foreach (Factor factor in choices)
        {
            var choice = (NumberChoice)factor.Distribution!;
            all = [.. all.SelectMany(c => choice.Weights.Select((w, k) => (c.States.Add(k), c.Probability * w)).Where(x => x.Item2 > 0))];
            if (all.Count > MostCombinations)
            {
                throw new StudyException(
                    $"the unknown choices have more than {MostCombinations} combinations of states; state fewer of them as unknown choices");
            }
        }

        return [.. all];
    }
}
