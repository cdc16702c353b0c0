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
        Combinations = Combine(model.Factors, Choices);
    }

    /// <summary>The unknown choices.</summary>
    public ImmutableArray<Factor> Choices { get; }

    /// <summary>The continuous unknown columns of the sample, one coordinate each.</summary>
    public ImmutableArray<int> Columns { get; }

    /// <summary>By column of the sample: whether it is unknown.</summary>
    public ImmutableArray<bool> IsUnknown { get; }

    /// <summary>
    /// The combinations of states: for each choice the index of its state; how probable it is; and which combination of what was
    /// learned before it belongs to, -1 where nothing was.
    /// </summary>
    public ImmutableArray<(ImmutableArray<int> States, double Probability, int Learned)> Combinations { get; }

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

        (ImmutableArray<int> states, _, int learned) = Combinations[combination];
        for (int i = 0; i < Choices.Length; i++)
        {
            scores[Choices[i].FirstColumn].AsSpan(0, count).Fill(ScoreOf(Choices[i], states[i]));
        }

        for (int i = 0; i < Columns.Length; i++)
        {
            z[i].AsSpan(first, count).CopyTo(scores[Columns[i]]);
        }

        for (int row = 0; learned >= 0 && row < count; row++)
        {
            factors.Learned!.Place(learned, scores, row);
        }

        factors.MapCoupled(scores, values, count);
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

    private static ImmutableArray<(ImmutableArray<int> States, double Probability, int Learned)> Combine(
        FactorSet factors, ImmutableArray<Factor> choices)
    {
        // Each combination that was learned, with every state of the choices that are new.
        Learned? learned = factors.Learned?.Learned;
        int[] place = [.. choices.Select(c => learned?.Choices.IndexOf(c.Name) ?? -1)];
        IEnumerable<int> begin = learned is null ? [-1] : Enumerable.Range(0, learned.States.Length);
        List<(ImmutableArray<int> States, double Probability, int Learned)> all = [];
        foreach (int of in begin)
        {
            List<(ImmutableArray<int> States, double Probability,
                int Learned)> some = [([], of < 0 ? 1 : learned!.States[of].Probability, of)];
            for (int i = 0; i < choices.Length; i++)
            {
                ImmutableArray<double> weights = ((NumberChoice)choices[i].Distribution!).Weights;
                some = place[i] >= 0
                    ? [.. some.Select(c => c with { States = c.States.Add(learned!.States[of].States[place[i]]) })]
                    : [.. some.SelectMany(c => weights.Select((w, k) => (c.States.Add(k), c.Probability * w, of))).Where(c => c.Item2 > 0)];
            }

            all.AddRange(some);
            if (all.Count > MostCombinations)
            {
                throw new StudyException(
                    $"the unknown choices have more than {MostCombinations} combinations of states; state fewer of them as unknown choices");
            }
        }

        return [.. all];
    }
}
