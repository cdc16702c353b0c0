using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fits;

/// <summary>Every family, from evenly spread values of its own.</summary>
public class FitFamiliesTests
{
    private const int Values = 400;

    public static TheoryData<string> Families => [.. FitFamilies.All.Select(f => f.Name)];

    // No fit is less likely than what the values were made of, and none far from it.
    [Theory]
    [MemberData(nameof(Families))]
    public void A_family_is_found_again_from_values_of_its_own(string family)
    {
        Distribution truth = Truth(family);
        double[] values = [.. Enumerable.Range(0, Values).Select(i => truth.Quantile((i + 0.5) / Values))];
        FamilyFit fit = FitAnalysis.Of(family, new FitData(values.Select(v => Observation.At(v))))!;
        Assert.Equal(family, fit.Distribution.Family);
        Assert.True(fit.LogLikelihood >= LogOf(truth, values) - 1e-9, $"{fit.LogLikelihood} is below {LogOf(truth, values)}");
        Assert.Equal(LogOf(fit.Distribution, values), fit.LogLikelihood, 1e-6);
        Assert.All(values, v => Assert.Equal(truth.Cumulative(v), fit.Distribution.Cumulative(v), 0.01));

        // Hurvich and Tsai 1989: 2 k - 2 ln L + 2 k (k + 1) / (n - k - 1).
        double k = fit.Parameters.Length;
        Assert.Equal((2 * k) - (2 * fit.LogLikelihood) + (2 * k * (k + 1) / (Values - k - 1)), fit.CorrectedAic, 1e-6);
    }

    // No step of a thousandth along any parameter is more likely.
    [Theory]
    [InlineData("gamma")]
    [InlineData("gumbel")]
    [InlineData("weibull")]
    [InlineData("triangular")]
    [InlineData("pert")]
    public void A_fit_is_the_most_likely_of_its_neighbours(string family)
    {
        var data = new FitData(PublishedLives.Bearings);
        FamilyFit fit = FitAnalysis.Of(family, data)!;
        double[] free = [.. fit.Parameters.Select(p => p.Value)];
        FitForm form = FitFamilies.Of(family).FormFor(data)!;
        for (int i = 0; i < free.Length; i++)
        {
            foreach (double times in new[] { 0.999, 1.001 })
            {
                double[] moved = [.. free];
                moved[i] *= times;
                double log = MaximumLikelihood.Log(form.Make(moved), data.Observations);
                Assert.True(log <= fit.LogLikelihood + 1e-7, $"{family} {i} {times}");
            }
        }
    }

    // From memory, any textbook: s / sqrt(n) and s / sqrt(2 n) of a normal, median times that of a lognormal, mean / sqrt(n).
    [Fact]
    public void Standard_errors_of_normal_lognormal_and_exponential_have_their_closed_forms()
    {
        double[] lives = [.. PublishedLives.Bearings.Select(o => o.Low)];
        var data = new FitData(PublishedLives.Bearings);
        double n = lives.Length;
        FamilyFit normal = FitAnalysis.Of("normal", data)!, lognormal = FitAnalysis.Of("lognormal", data)!,
            exponential = FitAnalysis.Of("exponential", data)!;
        double mean = lives.Average(), deviation = Math.Sqrt(lives.Average(x => (x - mean) * (x - mean)));
        Near(mean, normal.Parameters[0].Value);
        Near(deviation, normal.Parameters[1].Value);
        Near(deviation / Math.Sqrt(n), normal.StandardErrors[0]);
        Near(deviation / Math.Sqrt(2 * n), normal.StandardErrors[1]);
        double ofLn = lives.Average(Math.Log), sd = Math.Sqrt(lives.Average(x => Math.Pow(Math.Log(x) - ofLn, 2)));
        Near(Math.Exp(ofLn) * sd / Math.Sqrt(n), lognormal.StandardErrors[0]);
        Near(sd / Math.Sqrt(2 * n), lognormal.StandardErrors[1]);
        Near(mean, exponential.Parameters[0].Value);
        Near(mean / Math.Sqrt(n), exponential.StandardErrors[0]);
    }

    // Asymptotically the mean of n normal values spreads by s / sqrt(n) and ln of their deviation by 1 / sqrt(2 n). To the first order in
    // 1 / n a point z of the next value then lies at s (z + z / (2 n) + z (z^2 - 1) / (4 n)): the expansion of its mean by hand.
    [Fact]
    public void The_predictive_form_of_many_normal_values_is_a_little_wider_than_the_fit()
    {
        double[] values = [.. Enumerable.Range(0, 300).Select(i => StandardNormal.Quantile((i + 0.5) / 300))];
        Prediction predictive = FitAnalysis.Run(values.Select(v => Observation.At(v)), 1, new RunOptions(), 1).Predictive!;
        Assert.False(predictive.IsBootstrap);
        Assert.Equal("normal", predictive.Fit.Distribution.Family);
        double s = predictive.Fit.Parameters[1].Value;
        const double Z = 1.644854, N = 300;
        double half = s * (Z + (Z / (2 * N)) + (Z * ((Z * Z) - 1) / (4 * N)));
        Assert.Equal(half, predictive.High, 1e-3);
        Assert.Equal(-half, predictive.Low, 1e-3);
        Assert.Equal(half / (Z * s), predictive.Widening, 1e-3);
    }

    // n - k - 1 is 1 for the one parameter of the exponential and 0 for two; with as many parameters as values nothing is left to test.
    [Fact]
    public void Of_three_values_little_can_be_told()
    {
        FitResult result = FitAnalysis.Run(new[] { 1.0, 2.5, 7 }.Select(v => Observation.At(v)), 1, new RunOptions(), 9);
        FamilyFit exponential = result.Fits.Single(f => f.Distribution.Family == "exponential");
        Assert.Equal(3.5, exponential.Parameters[0].Value, 1e-6);
        Assert.Equal(2 - (2 * exponential.LogLikelihood) + 4, exponential.CorrectedAic, 1e-9);
        Assert.All(result.Fits, f => Assert.Equal(f.Parameters.Length > 1, double.IsNaN(f.CorrectedAic)));
        Assert.Contains(result.Fits, f => f.Parameters.Length >= 3);
        Assert.All(result.Fits.Where(f => f.Parameters.Length >= 3), f => Assert.True(double.IsNaN(f.PValue)));
    }

    private static Distribution Truth(string family) => family switch
    {
        "normal" => new Normal(10, 2),
        "lognormal" => new Lognormal(5, 0.4),
        "weibull" => new Weibull(2, 100),
        "gamma" => new Gamma(3, 2),
        "gumbel" => new Gumbel(10, 2),
        "exponential" => new Exponential(5, 0),
        "uniform" => new Uniform(2, 5),
        "log-uniform" => new LogUniform(2, 8),
        "triangular" => new Triangular(1, 3, 7),
        "pert" => new Pert(1, 3, 7, 4),
        _ => new ScaledBeta(2, 3, 1, 6),
    };

    private static double LogOf(Distribution distribution, double[] values) => values.Sum(v => Math.Log(distribution.Density(v)));

    private static void Near(double expected, double actual) =>
        Assert.True(Math.Abs(actual - expected) <= 2e-4 * Math.Abs(expected), $"{actual} is not {expected}");
}
