using AxleRisk.Core.Analyses.RareEvents;
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

        // Four-branch series system (attributed from memory to Waarts 2000 and Echard, Gayton, Lemaire 2011): exact by one-dimensional quadrature.
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
        { "step", (0.158655253931457 * 6.20966532577614e-3) + (0.682689492137086 * 3.167124183311986e-5) + (0.158655253931457 * 3.39767312473006e-6) },

        // |u| > 6 in 10 dimensions, a sphere without a design point of its own: chi-square tail.
        { "sphere 6 10", 8.417609804903e-5 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Importance_sampling_gives_the_exact_probability(string name, double exact)
    {
        (StratifiedImportance sampling, Stratum stratum) = TestLimits.Importance(Limit(name), TargetCov);
        output.WriteLine(
            $"{name}: {sampling.Estimate:E4} exact {exact:E4} ratio {sampling.Estimate / exact:F3} cov {sampling.Cov:F4} points {stratum.Points.Points.Count}"
            + $" search {stratum.SearchEvaluations} sampling {stratum.SamplingEvaluations} largest {sampling.LargestShare:F3} ess {sampling.EffectiveSize:F0}");

        // Four of its own standard errors.
        Assert.Equal(exact, sampling.Estimate, 4 * sampling.Cov * exact);
        Assert.True(sampling.Cov <= TargetCov);
        Assert.False(sampling.IsDegenerate);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Subset_simulation_gives_the_exact_probability(string name, double exact)
    {
        RareEventEstimate estimate = SubsetSimulation.Run(Limit(name), 1, new RunOptions())!;
        output.WriteLine($"{name}: {estimate.Probability.Estimate:E4} exact {exact:E4} ratio {estimate.Probability.Estimate / exact:F3} cov {estimate.Cov:F4} evaluations {estimate.Evaluations}");

        // The error comes from eight replicates: 4 standard errors of the normal law are 6.4 of Student's with 7 degrees of
        // freedom (P 4e-4 instead of 6e-5).
        Assert.Equal(exact, estimate.Probability.Estimate, 5.4 * estimate.Cov * exact);
        Assert.True(estimate.Cov < 0.3);
    }

    private static LimitState Limit(string name)
    {
        string[] words = name.Split(' ');
        double[] x = [.. words.Skip(1).Select(w => double.Parse(w, System.Globalization.CultureInfo.InvariantCulture))];
        return words[0] switch
        {
            "linear" => TestLimits.Linear(x[0], (int)x[1]),
            "smooth" => TestLimits.SmoothLinear(x[0], (int)x[1]),
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
