using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>The estimators of the indices on functions whose indices are known in closed form.</summary>
public sealed class SobolTermsTests
{
    // Source: Ishigami and Homma 1990, closed form for a = 7, b = 0.1. Scrambled Sobol' points, n = 2^14: worst of 20
    // scramblings elsewhere 0.0014, so 0.005.
    [Fact]
    public void Ishigami_function()
    {
        double[] first = [0.313905191148, 0.442411144790, 0];
        double[] total = [0.557588855210, 0.442411144790, 0.243683664062];
        Check(3, 1 << 14, "sobol", 0.005, first, total, u =>
        {
            double x1 = Math.PI * ((2 * u[0]) - 1);
            double x2 = Math.PI * ((2 * u[1]) - 1);
            double x3 = Math.PI * ((2 * u[2]) - 1);
            return Math.Sin(x1) + (7 * Math.Pow(Math.Sin(x2), 2)) + (0.1 * Math.Pow(x3, 4) * Math.Sin(x1)) - 3.5;
        });
    }

    // Source: the g-function of Sobol', a = (0, 1, 4.5, 9, 99, 99, 99, 99), closed form.
    [Fact]
    public void G_function()
    {
        double[] a = [0, 1, 4.5, 9, 99, 99, 99, 99];
        double[] first = [0.7161921689, 0.1790480422, 0.0236757742, 0.0071619217, 0.0000716192, 0.0000716192, 0.0000716192, 0.0000716192];
        double[] total = [0.7871441267, 0.2421981928, 0.0343169102, 0.0104603871, 0.0001049491, 0.0001049491, 0.0001049491, 0.0001049491];
        Check(8, 1 << 14, "sobol", 0.01, first, total, u => u.Select((x, i) => (Math.Abs((4 * x) - 2) + a[i]) / (1 + a[i]))
            .Aggregate(1.0, (p, q) => p * q) - 1);
    }

    // Source: closed form by the bivariate normal distribution, g = beta - sum alpha_i U_i, beta 2, alpha (0.8, 0.6).
    // The second variable plays the S-N scatter, whose part is integrated: first order and total of both kinds of factor.
    [Fact]
    public void Indicator_of_a_linear_limit_state_with_one_variable_integrated()
    {
        const double Beta = 2, A1 = 0.8, A2 = 0.6;
        const int N = 1 << 15;
        double[] a = Normals("A", N);
        double[] b = Normals("B", N);
        double p = 0, first1 = 0, total1 = 0, first2 = 0, total2 = 0;
        for (int i = 0; i < N; i++)
        {
            double gA = ((A1 * a[i]) - Beta) / A2;
            double gB = ((A1 * b[i]) - Beta) / A2;
            double pA = StandardNormal.Cumulative(gA);
            double pB = StandardNormal.Cumulative(gB);
            p += (pA + pB) / 2;
            first1 += SobolTerms.First(pA, pB, pB); // one variable left: A with it taken from B is B
            total1 += SobolTerms.EventTotal(pA, pB);
            first2 += SobolTerms.ScaleFirst(gA, gB, pA, pB, 1);
            total2 += SobolTerms.ScaleTotal(gA, pA, 1);
        }

        double pf = p / N;
        double variance = pf * (1 - pf);
        Assert.Equal(2.275013194818e-2, pf, 2e-4);
        Assert.Equal(0.2550174102, first1 / N / variance, 0.01);
        Assert.Equal(0.9089650293, total1 / N / variance, 0.01);
        Assert.Equal(0.0910349707, first2 / N / variance, 0.01);
        Assert.Equal(0.7449825898, total2 / N / variance, 0.01);
    }

    private static double[] Normals(string name, int n)
    {
        var z = new double[n];
        SamplingPlan.FromName("latin-hypercube", n).Fill(new StreamKey(1, name), 0, 0, z);
        StandardNormal.Quantiles(z, z);
        return z;
    }

    private static void Check(int inputs, int n, string sampling, double tolerance, double[] first, double[] total,
        Func<double[], double> f)
    {
        SamplingPlan plan = SamplingPlan.FromName(sampling, n);
        double[][] columns = [.. Enumerable.Range(0, 2 * inputs).Select(d =>
        {
            var column = new double[n];
            plan.Fill(new StreamKey(5, $"x{d}"), d, 0, column);
            return column;
        })];
        double sum = 0, squares = 0;
        double[] firsts = new double[inputs], totals = new double[inputs];
        for (int row = 0; row < n; row++)
        {
            double[] a = [.. columns.Take(inputs).Select(c => c[row])];
            double[] b = [.. columns.Skip(inputs).Select(c => c[row])];
            double fa = f(a), fb = f(b);
            sum += fa + fb;
            squares += (fa * fa) + (fb * fb);
            for (int i = 0; i < inputs; i++)
            {
                double kept = a[i];
                a[i] = b[i];
                double mixed = f(a);
                a[i] = kept;
                firsts[i] += SobolTerms.First(fa, fb, mixed);
                totals[i] += SobolTerms.Total(fa, mixed);
            }
        }

        double mean = sum / (2 * n), variance = (squares / (2 * n)) - (mean * mean);
        for (int i = 0; i < inputs; i++)
        {
            Assert.Equal(first[i], firsts[i] / n / variance, tolerance);
            Assert.Equal(total[i], totals[i] / n / variance, tolerance);
        }
    }
}
