using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>What was learned as a shape that a scenario can carry, and how well it stands for the posterior.</summary>
/// <param name="Learned">The shape.</param>
/// <param name="Share">
/// The effective share of a sample of the shape, weighed by the exact posterior over its own density: 1 where they are the same.
/// </param>
/// <param name="Columns">The names of the unknown columns of <paramref name="Sample"/>.</param>
/// <param name="Sample">Values of what is unknown, drawn from the exact posterior: by row and column.</param>
public sealed record LearnedShape(Learned Learned, double Share, ImmutableArray<string> Columns,
    ImmutableArray<ImmutableArray<double>> Sample)
{
    /// <summary>A share below which the shape does not stand for the posterior.</summary>
    public const double Good = 0.8;
}

/// <summary>Fits normal densities to a sample of the posterior, one for each combination of states.</summary>
internal static class LearnedFit
{
    /// <summary>A combination less probable is left out.</summary>
    private const double Negligible = 1e-4;

    private const int SampleRows = 1000;

    public static LearnedShape Of(LearnModel model, PosteriorSampler sampler, PosteriorSample posterior)
    {
        Unknowns unknowns = model.Unknowns;
        FactorSet factors = model.Model.Factors;
        int dimension = unknowns.Columns.Length;
        List<(int Combination, double Probability, NormalProposal Fit)> kept = [];
        for (int c = 0; c < unknowns.Combinations.Length; c++)
        {
            int[] rows = [.. Enumerable.Range(0, posterior.Weights.Length).Where(r => posterior.Combination[r] == c)];
            double probability = rows.Sum(r => posterior.Weights[r]);
            double[] weights = [.. rows.Select(r => posterior.Weights[r])];
            double[][] z = [.. posterior.Z.Select(column => rows.Select(r => column[r]).ToArray())];
            if (probability > Negligible && NormalProposal.Prior(dimension).Fitted(z, weights, 1, shrinks: false) is { } fit)
            {
                kept.Add((c, probability, fit));
            }
        }

        double total = kept.Sum(k => k.Probability);
        double share = sampler.ShareOf([.. kept.Select(k => (k.Combination, k.Probability / total, k.Fit))]);
        FieldData field = model.Model.Scenario.Field;
        GaugeData gauges = model.Model.Scenario.Gauges;
        var learned = new Learned(
            [.. unknowns.Choices.Select(f => f.Name)], [.. unknowns.Columns.Select(c => factors.ColumnNames[c])],
            [.. kept.Select(k => State(unknowns, factors, k.Combination, k.Probability / total, k.Fit)).OrderByDescending(s =>
                s.Probability)],
            [.. (factors.Learned?.Learned.Data ?? []).Concat(new[] { field.Digest, gauges.Digest }.Where(d => d.Length > 0)).Distinct()]);
        return new LearnedShape(learned, share, [.. Names(unknowns, factors)],
            Sample(unknowns, model.Model.CreateColumns, factors, posterior));
    }

    // From coordinates to scores: those of a scenario that has learned before are moved by what it learned.
    private static LearnedState State(Unknowns unknowns, FactorSet factors, int combination, double probability, NormalProposal fit)
    {
        (ImmutableArray<int> states, _, int before) = unknowns.Combinations[combination];
        Matrix<double> covariance = fit.Covariance;
        double[] mean = fit.Mean;
        if (before >= 0)
        {
            Learned old = factors.Learned!.Learned;
            LearnedState of = old.States[before];
            int[] place = [.. unknowns.Columns.Select(c => old.Columns.IndexOf(factors.ColumnNames[c]))];
            int dimension = mean.Length;

            // Columns that are new since then stand for themselves.
            var move = Matrix<double>.Build.Dense(dimension, dimension, (i, j) => place[i] < 0 || place[j] < 0 ? (i == j ? 1 : 0)
                : place[j] <= place[i] ? of.Factor[place[i]][place[j]] : 0);
            Vector<double> moved = move * Vector<double>.Build.DenseOfArray(mean);
            mean = [.. moved.Select((m, i) => m + (place[i] < 0 ? 0 : of.Mean[place[i]]))];
            covariance = move * covariance * move.Transpose();
        }

        return LearnedState.Of(states, probability, mean, covariance);
    }

    private static IEnumerable<string> Names(Unknowns unknowns, FactorSet factors) =>
        Enumerable.Range(0, unknowns.IsUnknown.Length).Where(c => unknowns.IsUnknown[c]).Select(c => factors.ColumnNames[c]);

    private static ImmutableArray<ImmutableArray<double>> Sample(
        Unknowns unknowns, Func<int, double[][]> createColumns, FactorSet factors, PosteriorSample posterior)
    {
        int[] columns = [.. Enumerable.Range(0, unknowns.IsUnknown.Length).Where(c => unknowns.IsUnknown[c])];
        double[][] scores = createColumns(1), values = createColumns(1);
        var sample = ImmutableArray.CreateBuilder<ImmutableArray<double>>(SampleRows);
        foreach (int row in posterior.Draw(SampleRows, 0.5))
        {
            unknowns.Map(posterior.Combination[row], posterior.Z, row, 1, scores, values);
            sample.Add([.. columns.Select(c => values[c][0])]);
        }

        return sample.ToImmutable();
    }
}
