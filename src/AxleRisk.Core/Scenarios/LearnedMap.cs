using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// The way from independent standard normal scores to those that data have taught: the scores of unknown choices pick a combination
/// of states, those of the continuous unknown inputs are moved by its mean and Cholesky factor. Every study's samples pass here,
/// and so keep the dependence.
/// </summary>
internal sealed class LearnedMap
{
    // Doubles inside the unit interval; the same ends as the copula's.
    private const double LeastUnit = 1.0 / (1L << 54);
    private const double GreatestUnit = 1 - (1.0 / (1L << 53));

    private readonly Learned learned;
    private readonly int[] choiceColumns;
    private readonly int[] columns;
    private readonly double[][] stateScores;
    private readonly double[][][] factors;

    /// <summary>The way of a scenario's factors.</summary>
    public LearnedMap(Learned learned, ImmutableArray<Factor> all)
    {
        this.learned = learned;
        Factor[] choices = [.. learned.Choices.Select(name => all.Single(f => f.Name == name))];
        choiceColumns = [.. choices.Select(f => f.FirstColumn)];
        columns = [.. learned.Columns.Select(name => all.Where(f => f.ColumnNames.Contains(name))
            .Select(f => f.FirstColumn + f.ColumnNames.IndexOf(name)).Single())];
        stateScores = [.. choices.Select(f => Middles(((NumberChoice)f.Distribution!).Weights))];
        factors = [.. learned.States.Select(s => s.Factor.Select(row => row.ToArray()).ToArray())];
    }

    /// <summary>What was learned.</summary>
    public Learned Learned => learned;

    /// <summary>
    /// What is known of one factor by itself: a mixture for a continuous one, other weights for a choice; its stated distribution
    /// where nothing was learned of it, or the combinations leave one state alone.
    /// </summary>
    public Distribution MarginalOf(Factor factor)
    {
        Distribution stated = factor.Distribution!;
        int column = learned.Columns.IndexOf(factor.Name), choice = learned.Choices.IndexOf(factor.Name);
        if (column >= 0)
        {
            return new LearnedMarginal(stated, learned, column);
        }

        if (choice < 0 || stated is not NumberChoice of)
        {
            return stated;
        }

        double[] weights = WeightsOf(factor.Name, of.Values.Length);
        return weights.All(w => w > 0) ? new NumberChoice([.. of.Values], weights) : stated;
    }

    /// <summary>The probability of each state of a choice that was learned of.</summary>
    public double[] WeightsOf(string choice, int states) => learned.Choices.IndexOf(choice) is var at
        ? [.. Enumerable.Range(0, states).Select(k => learned.States.Where(s => s.States[at] == k).Sum(s => s.Probability))] : [];

    /// <summary>The combination that the scores of a row pick.</summary>
    public void CoupleScores(double[][] scores, int count)
    {
        for (int row = 0; row < count; row++)
        {
            Place(Pick(scores, row), scores, row);
        }
    }

    /// <summary>The same of unit columns, in place.</summary>
    public void CoupleUnits(double[][] unit, int count)
    {
        int[] all = [.. choiceColumns, .. columns];
        foreach (int column in all)
        {
            StandardNormal.Quantiles(unit[column].AsSpan(0, count), unit[column].AsSpan(0, count));
        }

        CoupleScores(unit, count);
        foreach (int column in all)
        {
            for (int row = 0; row < count; row++)
            {
                unit[column][row] = Math.Clamp(StandardNormal.Cumulative(unit[column][row]), LeastUnit, GreatestUnit);
            }
        }
    }

    /// <summary>Puts a combination into a row: its states' scores, and the continuous ones moved.</summary>
    public void Place(int combination, double[][] scores, int row)
    {
        LearnedState state = learned.States[combination];
        for (int i = 0; i < choiceColumns.Length; i++)
        {
            scores[choiceColumns[i]][row] = stateScores[i][state.States[i]];
        }

        // From the last to the first: those before it are still the independent ones.
        double[][] factor = factors[combination];
        for (int i = columns.Length - 1; i >= 0; i--)
        {
            double moved = state.Mean[i];
            for (int j = 0; j <= i; j++)
            {
                moved += factor[i][j] * scores[columns[j]][row];
            }

            scores[columns[i]][row] = moved;
        }
    }

    // Choice after choice: the states of the first by their probability, those of the next given it.
    private int Pick(double[][] scores, int row)
    {
        ImmutableArray<LearnedState> states = learned.States;
        Span<bool> isLeft = stackalloc bool[states.Length];
        isLeft.Fill(true);
        for (int i = 0; i < choiceColumns.Length; i++)
        {
            double total = 0;
            for (int s = 0; s < states.Length; s++)
            {
                total += isLeft[s] ? states[s].Probability : 0;
            }

            double wanted = total * StandardNormal.Cumulative(scores[choiceColumns[i]][row]), below = 0;
            int picked = -1, last = -1;
            for (int k = 0; k < stateScores[i].Length && picked < 0; k++)
            {
                double own = 0;
                for (int s = 0; s < states.Length; s++)
                {
                    own += isLeft[s] && states[s].States[i] == k ? states[s].Probability : 0;
                }

                last = own > 0 ? k : last;
                below += own;
                picked = own > 0 && wanted < below ? k : -1;
            }

            picked = picked < 0 ? last : picked;
            for (int s = 0; s < states.Length; s++)
            {
                isLeft[s] &= states[s].States[i] == picked;
            }
        }

        return Math.Max(0, isLeft.IndexOf(true));
    }

    private static double[] Middles(ImmutableArray<double> weights)
    {
        var scores = new double[weights.Length];
        double below = 0;
        for (int k = 0; k < scores.Length; k++)
        {
            scores[k] = StandardNormal.Quantile(below + (0.5 * weights[k]));
            below += weights[k];
        }

        return scores;
    }
}
