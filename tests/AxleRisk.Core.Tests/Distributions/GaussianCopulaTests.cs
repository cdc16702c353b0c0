using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

public class GaussianCopulaTests
{
    private static readonly string[] Names = ["payload", "tyre", "speed"];

    /// <summary>rho_S = (6/pi) asin(rho/2), recomputed to 12 digits.</summary>
    [Theory]
    [InlineData(0.5, 0.482583739531)]
    [InlineData(0.7, 0.682910503824)]
    [InlineData(0.9, 0.891456131680)]
    [InlineData(0.517638090205, 0.5)]
    public void Pearson_and_Spearman_correlations_convert_both_ways(double pearson, double spearman)
    {
        Assert.Equal(spearman, GaussianCopula.ToSpearman(pearson), 1e-12);
        Assert.Equal(pearson, GaussianCopula.ToPearson(spearman), 1e-12);
    }

    [Fact]
    public void A_coupled_sample_has_the_rank_correlations_asked_for()
    {
        const int n = 100_000;
        var copula = new GaussianCopula(Names, Matrix(0.6, -0.3, 0.4));
        double[][] columns = [Column(1, n), Column(2, n), Column(3, n)];
        copula.Couple(columns, n);

        // The standard error of a rank correlation is below 1.06 / sqrt(n) (Fieller, Hartley and Pearson 1957); four of them.
        double tolerance = 4 * 1.06 / Math.Sqrt(n);
        Assert.Equal(0.6, Spearman(columns[0], columns[1]), tolerance);
        Assert.Equal(-0.3, Spearman(columns[0], columns[2]), tolerance);
        Assert.Equal(0.4, Spearman(columns[1], columns[2]), tolerance);

        // Each column is still uniform: the mean of n uniforms has the standard error 1 / sqrt(12 n).
        Assert.All(columns, c => Assert.Equal(0.5, c.Average(), 4 / Math.Sqrt(12.0 * n)));
        Assert.All(columns, c => Assert.All(c, u => Assert.True(u is >= 0 and < 1)));
    }

    [Fact]
    public void Scores_are_coupled_as_their_unit_values_are()
    {
        var copula = new GaussianCopula(Names, Matrix(0.6, -0.3, 0.4));
        double[][] units = [Column(1, 50), Column(2, 50), Column(3, 50)];
        double[][] scores = [.. units.Select(column => column.Select(u => Core.Numerics.StandardNormal.Quantile(u)).ToArray())];
        copula.Couple(units, 50);
        copula.CoupleScores(scores, 50);
        Assert.All(units.Zip(scores),
            c => Assert.All(c.First.Zip(c.Second), p => Assert.Equal(p.First, Core.Numerics.StandardNormal.Cumulative(p.Second), 1e-12)));
    }

    [Fact]
    public void Factors_without_correlation_stay_the_same_to_the_bit()
    {
        var copula = new GaussianCopula(Names, Matrix(0, 0.8, 0));
        double[][] columns = [Column(1, 50), Column(2, 50), Column(3, 50)];
        double[] last = [.. columns[2]];
        copula.Couple(columns, 49);
        Assert.Equal(Column(1, 50), columns[0]);
        Assert.Equal(Column(2, 50), columns[1]);
        Assert.NotEqual(last[48], columns[2][48]);
        Assert.Equal(last[49], columns[2][49]);
    }

    [Fact]
    public void The_ends_of_the_unit_interval_stay_inside_it()
    {
        var copula = new GaussianCopula(["a", "b"], new[,] { { 1, -0.9 }, { -0.9, 1 } });
        double[][] columns = [[0, 0, Math.BitDecrement(1.0)], [0, Math.BitDecrement(1.0), 0]];
        copula.Couple(columns, 3);
        Assert.All(columns[1], u => Assert.True(u is >= 0 and < 1));
    }

    [Fact]
    public void The_factor_times_its_transpose_is_the_correlation_matrix()
    {
        var copula = new GaussianCopula(Names, Matrix(0.6, -0.3, 0.4));
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double product = Enumerable.Range(0, j + 1).Sum(k => copula.Cholesky[i][k] * copula.Cholesky[j][k]);
                Assert.Equal(copula.Pearson[i, j], product, 1e-15);
            }
        }
    }

    [Fact]
    public void An_impossible_matrix_names_the_pair_to_look_at()
    {
        // Without one pair the smallest eigenvalue is 1 - sqrt(r1^2 + r2^2) of the other two: largest without payload and speed.
        var error = Assert.Throws<DistributionException>(() => new GaussianCopula(Names, Matrix(0.6, 0.7, -0.6)));
        Assert.Contains("payload and speed (0.7)", error.Message);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(-1.0)]
    [InlineData(1.5)]
    [InlineData(double.NaN)]
    public void A_correlation_outside_its_range_is_rejected_with_both_names(double rho)
    {
        var error = Assert.Throws<DistributionException>(() => new GaussianCopula(Names, Matrix(0, rho, 0)));
        Assert.Contains("payload and speed", error.Message);
    }

    [Fact]
    public void A_matrix_that_is_not_symmetric_or_not_of_unit_diagonal_is_rejected()
    {
        Assert.Throws<DistributionException>(() => new GaussianCopula(["a", "b"], new[,] { { 1, 0.2 }, { 0.3, 1 } }));
        Assert.Throws<DistributionException>(() => new GaussianCopula(["a", "b"], new[,] { { 1, 0.2 }, { 0.2, 0.9 } }));
    }

    private static double[,] Matrix(double r12, double r13, double r23) => new[,] { { 1, r12, r13 }, { r12, 1, r23 }, { r13, r23, 1 } };

    /// <summary>SplitMix64 (Steele, Lea and Flood 2014), top 53 bits.</summary>
    private static double[] Column(ulong seed, int n)
    {
        ulong state = seed << 32;
        double[] column = new double[n];
        for (int i = 0; i < n; i++)
        {
            ulong bits = state += 0x9E3779B97F4A7C15;
            bits = (bits ^ (bits >> 30)) * 0xBF58476D1CE4E5B9;
            bits = (bits ^ (bits >> 27)) * 0x94D049BB133111EB;
            column[i] = ((bits ^ (bits >> 31)) >> 11) * (1.0 / (1UL << 53));
        }

        return column;
    }

    private static double Spearman(double[] a, double[] b) => MathNet.Numerics.Statistics.Correlation.Spearman(a, b);
}
