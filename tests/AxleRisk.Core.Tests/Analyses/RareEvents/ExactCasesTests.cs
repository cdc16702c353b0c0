using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

/// <summary>Importance sampling and subset simulation against exact failure probabilities.</summary>
public sealed class ExactCasesTests(ITestOutputHelper output)
{
    private const double TargetCov = 0.05;

    public static TheoryData<string, double> Cases { get; } = new()
    {
        // Exact: Phi(-beta), closed form.
        { "linear 2 2", 2.275013194817919e-2 },
        { "linear 4 2", 3.167124183311986e-5 },
        { "linear 6 2", 9.865876450376946e-10 },
        { "linear 3 10", 1.349898031630093e-3 },
        { "linear 5 10", 2.866515718791933e-7 },
        { "linear 2 100", 2.275013194817919e-2 },
        { "linear 4 100", 3.167124183311986e-5 },
        { "linear 6 100", 9.865876450376946e-10 },
        { "smooth 4 10", 3.167124183311986e-5 },
        { "smooth 6 10", 9.865876450376946e-10 },
        { "smooth 6 100", 9.865876450376946e-10 },

        // |u_1| > beta: 2 Phi(-beta). The second side is out of sight of the search from the origin.
        { "sides 4 10", 2 * 3.167124183311986e-5 },
        { "sides 6 11", 2 * 9.865876450376946e-10 },

        // Four-branch series system (attributed from memory to Waarts 2000 and Echard, Gayton, Lemaire 2011): exact by
        // one-dimensional quadrature.
        { "branches 6", 4.457331490626e-3 },
        { "branches 7", 2.222795066194e-3 },

        // g = beta + sum k u_i^2 / 2 - u_n: exact by quadrature over the chi-square sum.
        { "parabola 3 0.1 1", 1.1689623426e-3 },
        { "parabola 3 0.1 9", 3.5306891035e-4 },
        { "parabola 4 0.1 9", 6.1255936143e-6 },
        { "parabola 3 -0.1 1", 1.6349422757e-3 },

        // Two planes beta1, beta2, correlation rho: bivariate normal integral.
        { "series 3 3 0.5", 2.6179064014e-3 },
        { "series 3 3.5 0.6", 1.5410805212e-3 },
        { "series 2.5 3 -0.4", 7.5595397588e-3 },
        { "parallel 3 3 0.5", 8.1889661832e-5 },
        { "parallel 3 3.5 0.6", 4.1446589421e-5 },
        { "parallel 2.5 3 -0.4", 2.3598587066e-8 },

        // Lognormal R - S, means 300 and 150, CoV 0.1 and 0.2: closed form.
        { "lognormal", 7.0677770575e-4 },

        // Steel beam (attributed from memory to Haldar and Mahadevan 2000): one-dimensional quadrature.
        { "beam", 1.0902214170e-5 },

        // 4 - u_1, with a step in u_2 that moves the surface: as a discrete factor does that is sampled. Sum over the steps.
        { "step", (0.158655253931457 * 6.20966532577614e-3) + (0.682689492137086 * 3.167124183311986e-5)
            + (0.158655253931457 * 3.39767312473006e-6) },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Importance_sampling_gives_the_exact_probability(string name, double exact)
    {
        (StratifiedImportance sampling, Stratum stratum) = TestLimits.Importance(Limit(name), TargetCov);
        output.WriteLine(
            $"{name}: {sampling.Estimate:E4} (exact {exact:E4}), CoV {sampling.Cov:F4}, {stratum.Points.Points.Count} points,"
            + $" {stratum.SearchEvaluations} + {stratum.SamplingEvaluations} evaluations");

        // Four of its own standard errors.
        Assert.Equal(exact, sampling.Estimate, 4 * sampling.Cov * exact);
        Assert.True(sampling.Cov <= TargetCov);
        Assert.False(sampling.IsDegenerate);
    }

    [Theory]
    [InlineData("linear 2 2", 2.275013194817919e-2)]
    [InlineData("linear 5 10", 2.866515718791933e-7)]
    [InlineData("linear 6 100", 9.865876450376946e-10)]
    [InlineData("smooth 6 10", 9.865876450376946e-10)]
    [InlineData("branches 7", 2.222795066194e-3)]
    [InlineData("parabola 4 0.1 9", 6.1255936143e-6)]
    [InlineData("parallel 2.5 3 -0.4", 2.3598587066e-8)]
    [InlineData("beam", 1.0902214170e-5)]
    [InlineData("sphere 6 10", 8.417609804903e-5)] // |u| > 6 in 10 dimensions: chi-square tail
    public void Subset_simulation_gives_the_exact_probability(string name, double exact)
    {
        RareEventEstimate estimate = SubsetSimulation.Run(Limit(name), 1, new RunOptions())!;

        // 4 standard errors of the normal law (6e-5) are 8.0 of Student's with the 7 degrees of freedom of eight replicates;
        // 5.4 leave 1e-3, and the method's own bias (below a tenth at 1000 samples a level) is inside.
        Assert.Equal(exact, estimate.Probability.Estimate, 5.4 * estimate.Cov * exact);
        Assert.True(estimate.Cov < 0.4);
    }

    [Theory]
    [InlineData("linear 5 10", 2.866515718791933e-7)]
    [InlineData("smooth 6 10", 9.865876450376946e-10)]
    [InlineData("branches 7", 2.222795066194e-3)]
    [InlineData("parabola 3 0.1 9", 3.5306891035e-4)]
    public void The_stated_error_is_the_real_one(string name, double exact)
    {
        const int Runs = 100;
        double[] errors = [.. Enumerable.Range(1, Runs).Select(seed =>
        {
            StratifiedImportance sampling = TestLimits.Importance(Limit(name), TargetCov, seed: (ulong)seed).Sampling;
            return (sampling.Estimate - exact) / (sampling.Cov * sampling.Estimate);
        })];
        output.WriteLine($"{name}: mean {errors.Average():F2}, root mean square {Math.Sqrt(errors.Average(e => e * e)):F2}");

        // Errors over their stated size: mean 0 with standard error 0.1, root mean square 1 with standard error 0.07. Four of
        // each, and 0.15 for stopping at the first variance that is small enough, which favours small estimates.
        Assert.Equal(0, errors.Average(), 0.4 + 0.15);
        Assert.Equal(1, Math.Sqrt(errors.Average(e => e * e)), 0.28 + 0.15);
    }

    [Fact]
    public void Weights_of_what_fails_more_often_than_not_make_no_probability_above_one()
    {
        // |u| > 0.03 and |u| > 0.001: two sides, each with a design point and nearly all of its half.
        for (ulong seed = 1; seed <= 6; seed++)
        {
            StratifiedImportance sampling = TestLimits.Importance(TestLimits.Of(2, u => 0.001 * seed - Math.Abs(u[0])), TargetCov,
                seed: seed).Sampling;
            Assert.InRange(sampling.Estimate, 0.9, 1);
            Assert.True(sampling.Probability.Low <= sampling.Estimate && sampling.Estimate <= sampling.Probability.High
                && sampling.Probability.High <= 1);
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    public void The_coefficient_of_variation_is_that_of_the_weights(double beta)
    {
        // g = beta - u, sampled from the normal density around beta: a sample's weight is exp(beta^2/2 - beta u) beyond beta, its
        // second moment exp(beta^2) Phi(-2 beta).
        (StratifiedImportance sampling, Stratum stratum) = TestLimits.Importance(TestLimits.Linear(beta, 1), 0.03);
        double p = StandardNormal.Upper(beta), ofOne = Math.Sqrt((Math.Exp(beta * beta) * StandardNormal.Upper(2 * beta) / (p * p)) - 1);

        // The variance of n weights like these is known to a few times n^-1/2: 1,500 samples or more, a tenth.
        Assert.Equal(ofOne / Math.Sqrt(stratum.Samples), sampling.Cov, 0.1 * sampling.Cov);
        Assert.Equal(1.96 * sampling.Cov, Math.Log(sampling.Probability.High / sampling.Estimate), 1e-3 * sampling.Cov);
        Assert.Equal(1.96 * sampling.Cov, Math.Log(sampling.Estimate / sampling.Probability.Low), 1e-3 * sampling.Cov);
    }

    private static LimitState Limit(string name)
    {
        string[] words = name.Split(' ');
        double[] x = [.. words.Skip(1).Select(w => double.Parse(w, System.Globalization.CultureInfo.InvariantCulture))];
        return words[0] switch
        {
            "linear" => TestLimits.Linear(x[0], (int)x[1]),
            "smooth" => TestLimits.SmoothLinear(x[0], (int)x[1]),
            "sides" => TestLimits.Of((int)x[1], u => x[0] - Math.Abs(u[0])),
            "branches" => TestLimits.FourBranches(x[0]),
            "parabola" => TestLimits.Parabola(x[0], x[1], (int)x[2]),
            "series" => TestLimits.Of(2, u => Math.Min(x[0] - u[0], x[1] - Second(u, x[2]))),
            "parallel" => TestLimits.Of(2, u => Math.Max(x[0] - u[0], x[1] - Second(u, x[2]))),
            "lognormal" => TestLimits.LognormalDifference(),
            "beam" => TestLimits.SteelBeam(),
            "step" => TestLimits.Of(2, u => 4 + (u[1] < -1 ? -1.5 : u[1] > 1 ? 0.5 : 0) - u[0]),
            "sphere" => TestLimits.Of((int)x[1], u => x[0] - Math.Sqrt(u.Sum(v => v * v))),
            _ => throw new ArgumentException(name, nameof(name)),
        };
    }

    private static double Second(double[] u, double rho) => (rho * u[0]) + (Math.Sqrt(1 - (rho * rho)) * u[1]);
}
