using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// What data have taught of a scenario's unknown inputs: how probable each combination of the states of unknown choices is, and
/// for each the mean and covariance of the continuous ones as standard normal scores of their distributions.
/// </summary>
/// <param name="Choices">The unknown choices, by name.</param>
/// <param name="Columns">The continuous unknown columns of the sample, by name.</param>
/// <param name="States">The combinations; their probabilities sum to 1.</param>
/// <param name="Data">The digests of the data files that were learned from.</param>
public sealed record Learned(
    ImmutableArray<string> Choices, ImmutableArray<string> Columns, ImmutableArray<LearnedState> States, ImmutableArray<string> Data)
{
    /// <summary>The same without an input: of a choice combinations that are no longer apart are joined, their first two moments
    /// kept.</summary>
    public Learned Without(string name) => Columns.Contains(name) ? WithoutColumn(Columns.IndexOf(name))
        : Choices.Contains(name) ? WithoutChoice(Choices.IndexOf(name)) : this;

    /// <summary>The same given a continuous input: combinations weighed anew, the other inputs as their joint normal scores have them
    /// beside it; its own score is the one it has in every row.</summary>
    /// <param name="name">One of <see cref="Columns"/>.</param>
    /// <param name="score">The standard normal score of its stated distribution.</param>
    internal Learned GivenScore(string name, double score)
    {
        int column = Columns.IndexOf(name);
        double[] logs = [.. States.Select(s => s.LogWeight(column, score))];
        double[] weights = [.. logs.Select(l => Math.Exp(l - logs.Max()))];
        return Weighed((s, i) => s.Given(column, score, weights[i]));
    }

    /// <summary>The same given the state of a choice.</summary>
    /// <param name="name">One of <see cref="Choices"/>.</param>
    /// <param name="state">The index of a state that is possible.</param>
    internal Learned GivenState(string name, int state) =>
        Choices.IndexOf(name) is var choice
            ? Weighed((s, _) => s with { Probability = s.States[choice] == state ? s.Probability : 0 }) : this;

    private Learned Weighed(Func<LearnedState, int, LearnedState> given)
    {
        LearnedState[] states = [.. States.Select(given).Where(s => s.Probability > 0)];
        double all = states.Sum(s => s.Probability);
        return this with { States = [.. states.Select(s => s with { Probability = s.Probability / all })] };
    }

    private Learned WithoutColumn(int column) => this with
    {
        Columns = Columns.RemoveAt(column),
        States =
        [
            .. States.Select(s => LearnedState.Of(
                s.States, s.Probability, [.. s.Mean.RemoveAt(column)], s.Covariance.RemoveRow(column).RemoveColumn(column))),
        ],
    };

    private Learned WithoutChoice(int choice) => this with
    {
        Choices = Choices.RemoveAt(choice),
        States =
        [
            .. States.GroupBy(s => string.Join(',', s.States.RemoveAt(choice))).Select(g =>
            {
                double probability = g.Sum(s => s.Probability);
                double[] mean = [.. Columns.Select((_, i) => g.Sum(s => s.Probability * s.Mean[i]) / probability)];
                var covariance = Matrix<double>.Build.Dense(mean.Length, mean.Length, (i, j) => g.Sum(s =>
                    s.Probability * (s.Covariance[i, j] + ((s.Mean[i] - mean[i]) * (s.Mean[j] - mean[j])))) / probability);
                return LearnedState.Of(g.First().States.RemoveAt(choice), probability, mean, covariance);
            }),
        ],
    };
}

/// <summary>One combination of the states of unknown choices.</summary>
/// <param name="States">The index of the state of each choice.</param>
/// <param name="Probability">Its probability.</param>
/// <param name="Mean">The mean scores of the continuous columns.</param>
/// <param name="Factor">The Cholesky factor of their covariance, row by row.</param>
public sealed record LearnedState(
    ImmutableArray<int> States, double Probability, ImmutableArray<double> Mean, ImmutableArray<ImmutableArray<double>> Factor)
{
    /// <summary>The covariance.</summary>
    internal Matrix<double> Covariance => Matrix<double>.Build.Dense(Mean.Length, Mean.Length, (i, j) =>
        Enumerable.Range(0, Math.Min(i, j) + 1).Sum(k => Factor[i][k] * Factor[j][k]));

    /// <summary>The logarithm of its probability times the density of one score, but for a constant.</summary>
    internal double LogWeight(int column, double score)
    {
        double deviation = Deviation(column), z = (score - Mean[column]) / deviation;
        return Math.Log(Probability / deviation) - (0.5 * z * z);
    }

    /// <summary>The standard deviation of one score.</summary>
    internal double Deviation(int column) => Math.Sqrt(Factor[column].Sum(x => x * x));

    /// <summary>
    /// The others given one score, by the rule of joint normals (their means move along the regression, their covariance is what it
    /// leaves); that score itself is certain.
    /// </summary>
    internal LearnedState Given(int column, double score, double probability)
    {
        Matrix<double> all = Covariance;
        double[] slope = [.. all.Column(column).Select(c => c / all[column, column])];
        var left = Matrix<double>.Build.Dense(Mean.Length, Mean.Length, (i, j) => all[i, j] - (slope[i] * all[column, j]));
        Matrix<double> rest = left.RemoveRow(column).RemoveColumn(column);

        // Where next to nothing is left open, that much is.
        const double Least = 1e-9;
        double[][] factor = rest.RowCount == 0 ? []
            : CholeskyFactor.Of(rest) ?? CholeskyFactor.Of(rest + (Least * Matrix<double>.Build.DenseIdentity(rest.RowCount)))!;
        double At(int i, int j) => i == column || j == column ? 0 : factor[i - (i > column ? 1 : 0)][j - (j > column ? 1 : 0)];
        return new(
            States, probability, [.. Mean.Select((m, i) => i == column ? score : m + (slope[i] * (score - Mean[column])))],
            [.. Mean.Select((_, i) => Enumerable.Range(0, i + 1).Select(j => At(i, j)).ToImmutableArray())]);
    }

    /// <summary>A combination from the lower triangle of its covariance, row by row.</summary>
    /// <exception cref="DistributionException">The covariance is none.</exception>
    public static LearnedState OfTriangle(ImmutableArray<int> states, double probability, double[] mean, IReadOnlyList<double> triangle) =>
        Of(states, probability, mean, Matrix<double>.Build.Dense(mean.Length, mean.Length, (i, j) =>
            triangle[(Math.Max(i, j) * (Math.Max(i, j) + 1) / 2) + Math.Min(i, j)]));

    /// <summary>A combination from its covariance.</summary>
    /// <exception cref="DistributionException">The covariance is none.</exception>
    internal static LearnedState Of(ImmutableArray<int> states, double probability, double[] mean, Matrix<double> covariance) =>
        CholeskyFactor.Of(covariance) is { } factor
            ? new(states, probability, [.. mean], [.. factor.Select(row => row.ToImmutableArray())])
            : throw new DistributionException("the covariance of what was learned is not positive definite");
}
