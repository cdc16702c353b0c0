using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>With no factor but Miner sum and scatter the life is lognormal, and the whole curve has a closed form.</summary>
public sealed class FailureCurveTests
{
    private const double MedianKm = 486_590.166;
    private static readonly double Sigma = Math.Sqrt((0.29 * 0.29) + Math.Pow(0.20 * Math.Log(10), 2));

    private static readonly LifeModel Model = new(FiveLegs.Scenario with
    {
        Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
            i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with
                { Value = new Value.Certain(i.Value.Nominal) })],
    });

    [Theory]
    [InlineData(50_000)]
    [InlineData(200_000)]
    [InlineData(486_590)]
    [InlineData(3_000_000)]
    public void The_conditional_probability_is_exact_but_for_the_bins(double km)
    {
        RiskResult result = Run(RiskMethod.Conditional, "plain", km);
        double exact = StandardNormal.Cumulative(Math.Log(km / MedianKm) / Sigma);

        // All damages fall into one bin, at most half of 1/1024 from its middle: dP = density * half a bin / sigma.
        double bound = StandardNormal.Density(Math.Log(km / MedianKm) / Sigma) * LogHistogram.RelativeError / Sigma * 1.01;
        Assert.Equal(exact, result.Distances.Single(d => d.DistanceKm == km).Probability.Estimate, bound);
    }

    [Theory]
    [InlineData(RiskMethod.Crude, "plain")]
    [InlineData(RiskMethod.Crude, "sobol")]
    [InlineData(RiskMethod.Crude, "latin-hypercube")]
    public void Counted_lives_enclose_the_exact_ones(RiskMethod method, string sampling)
    {
        foreach (LifeQuantile life in Run(method, sampling, 1000).Lives)
        {
            double exact = MedianKm * Math.Exp(Sigma * StandardNormal.Quantile(life.Percent / 100));
            double half = Math.Log(life.LifeKm.High / life.LifeKm.Low) / 2;

            // Twice the 95 % interval: four standard errors.
            Assert.InRange(exact, life.LifeKm.Estimate * Math.Exp(-2 * half), life.LifeKm.Estimate * Math.Exp(2 * half));
            Assert.InRange(half, 1e-6, 0.1);
        }
    }

    [Fact]
    public void The_interval_of_a_life_from_replicates_is_that_of_students_t()
    {
        LifeSummary[] replicates = [.. Enumerable.Range(0, 16).Select(r => OfOneDamage(Math.Exp(0.3 * Math.Sin(r)) / MedianKm))];
        var curve = new FailureCurve(replicates, Model.Scale);
        Interval life = curve.Life(0.1);
        double[] each = [.. replicates.Select(r => new FailureCurve([r], Model.Scale).At(life.Estimate).Estimate)];
        double mean = each.Average();
        double error = Math.Sqrt(each.Sum(p => (p - mean) * (p - mean)) / 15 / 16);

        // Student's t of 15 degrees of freedom, 97.5 %: 2.131 (any table, as in ISO 2602:1980).
        double half = 2.131 * error / 0.1;
        Assert.Equal(0.1, mean, 1e-6);
        Assert.Equal(-half, Math.Log(curve.At(life.Low).Estimate / 0.1), 3e-4 * half);
        Assert.Equal(half, Math.Log(curve.At(life.High).Estimate / 0.1), 3e-4 * half);
        Interval by = curve.At(life.Estimate);
        Assert.Equal(half, Math.Log(by.High / by.Estimate), 3e-4 * half);
        Assert.Equal(half, Math.Log(by.Estimate / by.Low), 3e-4 * half);
    }

    [Fact]
    public void One_evaluation_says_nothing_of_its_error()
    {
        RiskResult one = RiskAnalysis.Run(Model, new StudySettings(1, 1, "plain"), new RiskQuestion { Method = RiskMethod.Conditional },
            new RunOptions()).Result;
        Assert.Equal((0, 1), (one.AtRequired.Probability.Low, one.AtRequired.Probability.High));
    }

    private static LifeSummary OfOneDamage(double perKm)
    {
        var summary = new LifeSummary(1);
        summary.Damage.AddLn(Math.Log(perKm));
        summary.Life.AddLn(-Math.Log(perKm));
        return summary;
    }

    private static RiskResult Run(RiskMethod method, string sampling, double km) => RiskAnalysis.Run(
        Model, new StudySettings(8_192, 1, sampling), new RiskQuestion { Method = method, DistancesKm = [km] }, new RunOptions()).Result;
}
