using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fits;

/// <summary>Fits against published data sets; parameters recomputed with scipy to the digits shown.</summary>
public class FitAnalysisTests
{
    [Theory]
    [InlineData("Nist", 1.720797, 606.5276, -75.134618, 6.226015, 0.908914, -75.196271)]
    [InlineData("Bearings", 2.10185, 81.8746, -113.69196, 4.15038, 0.52169, -113.12855)]
    [InlineData("ShockAbsorbers", 3.16047, 27718.72, -123.99536, 10.14477, 0.53007, -124.60855)]
    public void Parameters_and_likelihoods_are_the_published(
        string data, double shape, double scale, double ofWeibull, double mu, double sigma, double ofLognormal)
    {
        var ready = new FitData(DataOf(data));
        FamilyFit weibull = FitAnalysis.Of("weibull", ready)!, lognormal = FitAnalysis.Of("lognormal", ready)!;
        Near(shape, weibull.Parameters[0].Value);
        Near(scale, weibull.Parameters[1].Value);
        Near(ofWeibull, weibull.LogLikelihood);
        Near(mu, Math.Log(lognormal.Parameters[0].Value));
        Near(sigma, lognormal.Parameters[1].Value);
        Near(ofLognormal, lognormal.LogLikelihood);
    }

    // Meeker and Escobar print 10.23 and 0.3164 for ln scale and 1/shape; their standard errors recomputed: 0.10989, 0.07317.
    [Fact]
    public void Standard_errors_are_those_of_the_observed_information()
    {
        FamilyFit fit = FitAnalysis.Of("weibull", new FitData(PublishedLives.ShockAbsorbers))!;
        (double shape, double scale) = (fit.Parameters[0].Value, fit.Parameters[1].Value);
        Near(0.07317, fit.StandardErrors[0] / (shape * shape), 2e-4);
        Near(0.10989, fit.StandardErrors[1] / scale, 2e-4);
    }

    // The predictive distribution of a normal sample is Student's t: mean +- t s sqrt(1 + 1/n) (from memory; any textbook).
    [Fact]
    public void The_predictive_form_of_few_normal_values_is_near_students_t()
    {
        double[] values = [5.1, 5.6, 5.8, 5.9, 6.0, 6.1, 6.1, 6.3, 6.6, 7.0];
        FitResult result = FitAnalysis.Run(values.Select(v => Observation.At(v)), 1, new RunOptions(), 99);
        Prediction predictive = result.Predictive!;
        Assert.True(predictive.IsBootstrap);
        FamilyFit normal = result.Fits.Single(f => f.Distribution.Family == "normal");
        double s = normal.Parameters[1].Value * Math.Sqrt(10.0 / 9);
        double t = 1.833113; // 95 % point with 9 degrees of freedom
        double exact = 2 * t * s * Math.Sqrt(1.1) / (2 * 1.644854 * normal.Parameters[1].Value);
        Assert.InRange(exact, 1.2, 1.3);
        if (predictive.Fit.Distribution.Family == "normal")
        {
            Near(exact, predictive.Widening, 0.03);
        }
        else
        {
            Assert.InRange(predictive.Widening, 1.15, 1.4);
        }
    }

    // With all values known under the normal the test of fit must not refuse its own samples, and must refuse another family.
    [Fact]
    public void The_test_refuses_the_wrong_family_and_keeps_the_right_one()
    {
        double[] values = [.. Enumerable.Range(1, 60).Select(i => Math.Exp(StandardNormal.Quantile((i - 0.5) / 60)))];
        FitResult result = FitAnalysis.Run(values.Select(v => Observation.At(v)), 1, new RunOptions(), 99);
        Assert.Equal("lognormal", result.Fits[0].Distribution.Family);
        Assert.True(result.Fits[0].PValue > 0.9);
        Assert.True(result.Fits.Single(f => f.Distribution.Family == "normal").PValue < 0.02);
        Assert.Contains(result.Fits, f => f.Distribution.Family == "uniform" && double.IsNaN(f.PValue));
    }

    [Fact]
    public void Digits_do_not_depend_on_threads()
    {
        FitResult one = FitAnalysis.Run(PublishedLives.Bearings, 3, new RunOptions { Threads = 1 }, 39);
        FitResult two = FitAnalysis.Run(PublishedLives.Bearings, 3, new RunOptions { Threads = 2 }, 39);
        Assert.Equal(one.Fits.Select(f => f.PValue), two.Fits.Select(f => f.PValue));
        Assert.Equal(one.Predictive!.High, two.Predictive!.High);
    }

    private static Observation[] DataOf(string name) => name switch
    {
        "Nist" => PublishedLives.Nist,
        "Bearings" => PublishedLives.Bearings,
        _ => PublishedLives.ShockAbsorbers,
    };

    private static void Near(double expected, double actual, double relative = 1e-5) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"{actual} is not {expected}");
}
