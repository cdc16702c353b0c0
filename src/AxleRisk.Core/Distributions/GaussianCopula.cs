using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Distributions;

/// <summary>
/// Dependence between factors by a Gaussian copula, stated by rank correlations (Spearman): the normal scores of the factors
/// are jointly normal with Pearson correlation 2 sin(pi rho_S / 6) (Pearson 1907).
/// </summary>
public sealed class GaussianCopula
{
    // The unit values whose normal scores are finite: the ends of [0, 1) would spread infinities through a row.
    private const double LeastUnit = 1.0 / (1L << 54);
    private const double GreatestUnit = 1 - (1.0 / (1L << 53));

    private readonly ImmutableArray<string> names;
    private readonly double[][] factor;
    private readonly int[] coupled;

    /// <summary>Creates the copula.</summary>
    /// <param name="names">The factors' names, for messages.</param>
    /// <param name="spearman">Their rank correlations: symmetric, ones on the diagonal, all others within (-1, 1).</param>
    /// <exception cref="DistributionException">The matrix is not one of rank correlations; the message names the pair to look
    /// at.</exception>
    public GaussianCopula(IReadOnlyList<string> names, double[,] spearman)
    {
        this.names = [.. names];
        CheckEntries(spearman);
        var pearson = Matrix<double>.Build.Dense(names.Count, names.Count, (i, j) => i == j ? 1 : ToPearson(spearman[i, j]));
        factor = CholeskyFactor.Of(pearson) ?? throw Impossible(pearson);
        Pearson = pearson.ToArray();
        coupled = [.. Enumerable.Range(0, names.Count).Where(i => factor[i].Take(i).Any(l => l != 0))];
    }

    /// <summary>The Pearson correlations of the normal scores.</summary>
    public double[,] Pearson { get; }

    /// <summary>
    /// The lower Cholesky factor L of <see cref="Pearson"/>, row by row, row i of length i + 1: scores = L times independent
    /// scores.
    /// </summary>
    public IReadOnlyList<double[]> Cholesky => factor;

    /// <summary>The Pearson correlation of the normal scores that gives a rank correlation.</summary>
    public static double ToPearson(double spearman) => 2 * Math.Sin(Math.PI * spearman / 6);

    /// <summary>The rank correlation of two jointly normal scores.</summary>
    public static double ToSpearman(double pearson) => 6 / Math.PI * Math.Asin(pearson / 2);

    /// <summary>
    /// Gives independent columns of [0, 1) the dependence, in place. A factor without correlation to the ones before it is left
    /// untouched to the bit.
    /// </summary>
    /// <param name="unitColumns">One column a factor, in the order of the names.</param>
    /// <param name="count">The number of rows in use.</param>
    public void Couple(double[][] unitColumns, int count)
    {
        double[] z = new double[names.Length];
        for (int row = 0; row < count && coupled.Length > 0; row++)
        {
            for (int i = 0; i < z.Length; i++)
            {
                z[i] = StandardNormal.Quantile(Math.Clamp(unitColumns[i][row], LeastUnit, GreatestUnit));
            }

            foreach (int i in coupled)
            {
                double score = 0;
                for (int j = 0; j <= i; j++)
                {
                    score += factor[i][j] * z[j];
                }

                unitColumns[i][row] = Math.Min(StandardNormal.Cumulative(score), GreatestUnit);
            }
        }
    }

    /// <summary>
    /// Gives columns of independent standard normal scores the dependence, in place: what <see cref="Couple"/> does to their unit
    /// values.
    /// </summary>
    /// <param name="scores">One column a factor, in the order of the names.</param>
    /// <param name="count">The number of rows in use.</param>
    public void CoupleScores(double[][] scores, int count)
    {
        for (int row = 0; row < count; row++)
        {
            // A score depends on those before it alone: from the last on, none is overwritten too early.
            foreach (int i in coupled.Reverse())
            {
                double score = 0;
                for (int j = 0; j <= i; j++)
                {
                    score += factor[i][j] * scores[j][row];
                }

                scores[i][row] = score;
            }
        }
    }

    private void CheckEntries(double[,] spearman)
    {
        if (spearman.GetLength(0) != names.Length || spearman.GetLength(1) != names.Length)
        {
            throw new ArgumentException("the matrix needs one row and one column for each name", nameof(spearman));
        }

        for (int i = 0; i < names.Length; i++)
        {
            if (spearman[i, i] != 1)
            {
                throw new DistributionException($"the correlation of {names[i]} with itself must be 1, not {spearman[i, i]:G6}", names[i]);
            }

            for (int j = 0; j < i; j++)
            {
                if (!(Math.Abs(spearman[i, j]) < 1))
                {
                    throw new DistributionException(
                        $"the rank correlation of {names[j]} and {names[i]} must lie between -1 and 1, ends excluded, not {spearman[i, j]:G6}");
                }

                if (spearman[i, j] != spearman[j, i])
                {
                    throw new DistributionException($"the rank correlation of {names[j]} and {names[i]} is stated twice and differently");
                }
            }
        }
    }

    /// <summary>Names the pair whose independence would raise the smallest eigenvalue most.</summary>
    private DistributionException Impossible(Matrix<double> pearson)
    {
        (int I, int J, double Smallest) worst = (0, 0, double.NegativeInfinity);
        for (int i = 0; i < names.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (pearson[i, j] != 0)
                {
                    Matrix<double> without = pearson.Clone();
                    without[i, j] = without[j, i] = 0;
                    double smallest = without.Evd(Symmetricity.Symmetric).EigenValues.Real().Minimum();
                    worst = smallest > worst.Smallest ? (i, j, smallest) : worst;
                }
            }
        }

        return new DistributionException(
            $"no factors can have these rank correlations all at once: look first at that of {names[worst.J]} and {names[worst.I]}"
            + $" ({ToSpearman(pearson[worst.I, worst.J]):G4})");
    }
}
