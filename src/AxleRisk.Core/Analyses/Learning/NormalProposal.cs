using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// What coordinates of one combination are drawn from: eight parts of a normal density moved to the data and one of the prior, in
/// these very numbers (a deterministic mixture, Owen and Zhou 2000), so that no weight for moving exceeds nine and low-discrepancy
/// points keep their evenness.
/// </summary>
internal sealed class NormalProposal
{
    /// <summary>Rows of the moved density for one of the prior.</summary>
    public const int MovedParts = 8;

    private readonly double[] mean;
    private readonly double[][] cholesky;
    private readonly double lnDeterminant;

    public NormalProposal(double[] mean, double[][] cholesky)
    {
        (this.mean, this.cholesky) = (mean, cholesky);
        lnDeterminant = cholesky.Sum(row => Math.Log(row[^1]));
    }

    /// <summary>The mean.</summary>
    public double[] Mean => mean;

    /// <summary>The covariance.</summary>
    public Matrix<double> Covariance => Matrix<double>.Build.Dense(mean.Length, mean.Length, (i, j) =>
        Enumerable.Range(0, Math.Min(i, j) + 1).Sum(k => cholesky[i][k] * cholesky[j][k]));

    /// <summary>The prior.</summary>
    public static NormalProposal Prior(int dimension) =>
        new(new double[dimension], [.. Enumerable.Range(0, dimension).Select(i => (double[])[.. new double[i], 1])]);

    /// <summary>Fills coordinates: of the prior, or moved.</summary>
    public void Draw(bool moved, ulong seed, string stream, int first, int count, double[][] z)
    {
        SamplingPlan plan = SamplingPlan.FromName(ScrambledSobol.PlanName, count);
        for (int i = 0; i < z.Length; i++)
        {
            Span<double> column = z[i].AsSpan(first, count);
            plan.Fill(new StreamKey(seed, $"learn/{stream}/{i}"), i % plan.Dimensions, 0, column);
            StandardNormal.Quantiles(column, column);
        }

        for (int row = first; moved && row < first + count; row++)
        {
            // From the last coordinate to the first: those before it are still the independent ones.
            for (int i = z.Length - 1; i >= 0; i--)
            {
                double sum = mean[i];
                for (int j = 0; j <= i; j++)
                {
                    sum += cholesky[i][j] * z[j][row];
                }

                z[i][row] = sum;
            }
        }
    }

    /// <summary>ln of the prior's density over the mixture's.</summary>
    public double LogPriorOverMixture(double[][] z, int row)
    {
        double log = -LogPriorOverMoved(z, row);
        const double moved = (double)MovedParts / (MovedParts + 1), prior = 1.0 / (MovedParts + 1);
        return log > 0 ? -log - Math.Log(moved + (prior * Math.Exp(-log))) : -Math.Log(prior + (moved * Math.Exp(log)));
    }

    /// <summary>ln of the prior's density over the moved one's.</summary>
    public double LogPriorOverMoved(double[][] z, int row)
    {
        double log = -lnDeterminant;
        Span<double> x = stackalloc double[z.Length];
        for (int i = 0; i < z.Length; i++)
        {
            double rest = z[i][row] - mean[i];
            for (int j = 0; j < i; j++)
            {
                rest -= cholesky[i][j] * x[j];
            }

            x[i] = rest / cholesky[i][i];
            log += 0.5 * ((z[i][row] * z[i][row]) - (x[i] * x[i]));
        }

        return -log;
    }

    /// <summary>
    /// The normal density fitted to weighted rows, shrunk toward this one by as many rows as there are coordinates; null where that
    /// is none.
    /// </summary>
    /// <param name="z">The coordinates.</param>
    /// <param name="weights">Their weights, of any sum.</param>
    /// <param name="widening">The variances are widened by this.</param>
    /// <param name="shrinks">Whether it is shrunk.</param>
    public NormalProposal? Fitted(double[][] z, double[] weights, double widening, bool shrinks = true)
    {
        int dimension = z.Length;
        double total = weights.Sum(), size = total * total / weights.Sum(w => w * w);
        double[] mean = [.. z.Select(c => c.Zip(weights, (x, w) => x * w).Sum() / total)];
        Matrix<double> own = Covariance;
        double toward = shrinks ? dimension : 1e-9;
        var covariance = Matrix<double>.Build.Dense(dimension, dimension, (i, j) =>
        {
            double sum = 0;
            for (int row = 0; row < weights.Length; row++)
            {
                sum += weights[row] * (z[i][row] - mean[i]) * (z[j][row] - mean[j]);
            }

            return widening * ((size * sum / total) + (toward * own[i, j])) / (size + toward);
        });
        return CholeskyFactor.Of(covariance) is { } factor ? new NormalProposal(mean, factor) : null;
    }
}
