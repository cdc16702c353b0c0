using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Analyses.Fleets;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>Errors of failure probabilities from summaries made by hand, against the formulas of any textbook of statistics.</summary>
public sealed class FailureCurveErrorTests
{
    private static readonly LifeModel Model = new(FleetCases.ScaleOnly());

    [Theory]
    [InlineData(1, 100)]
    [InlineData(30, 100)]
    [InlineData(99, 100)]
    [InlineData(5, 20_000)]
    public void Counted_failures_have_the_error_of_the_binomial(int failed, int n)
    {
        var curve = new FailureCurve([Counted(failed, n)], null);
        double p = (double)failed / n;
        Assert.Equal(p, curve.At(1000).Estimate, 1e-15);
        Assert.Equal(Math.Sqrt((1 - p) / (p * n)), curve.CoefficientOfVariation(1000), 1e-14);
        Assert.Equal(BinomialInterval.Wilson(failed, n), curve.At(1000));
        Assert.Equal(0, curve.At(5).Estimate);
        Assert.Equal(double.PositiveInfinity, curve.CoefficientOfVariation(5));
        Assert.Equal(1, curve.At(1e9).Estimate);
        Assert.Equal(0, curve.CoefficientOfVariation(1e9));
    }

    [Fact]
    public void Counted_replicates_have_the_error_of_their_differences()
    {
        int[] failed = [10, 14, 9, 11];
        var curve = new FailureCurve([.. failed.Select(f => Counted(f, 200))], null);
        double mean = 44 / 800.0, error = Math.Sqrt(failed.Sum(f => Math.Pow((f / 200.0) - mean, 2)) / 3 / 4);
        Assert.Equal(error / mean, curve.CoefficientOfVariation(1000), 1e-13);
        double spread = Math.Exp(3.182446305 * error / mean); // Student, 3 degrees of freedom, 97.5 % (any table: 3.182)
        Interval at = curve.At(1000);
        Assert.Equal(mean, at.Estimate, 1e-15);
        Assert.Equal(mean / spread, at.Low, 1e-10);
        Assert.Equal(mean * spread, at.High, 1e-10);
        Assert.Equal(BinomialInterval.Wilson(0, 800), curve.At(5));
        Assert.Equal(double.PositiveInfinity, curve.CoefficientOfVariation(5));
    }

    [Fact]
    public void Exact_probabilities_given_the_damage_have_the_error_of_their_mean()
    {
        double mu = Model.Scale.Mu, sigma = Model.Scale.Sigma;
        double[] scores = [-2, -1, 0, 0.5];
        var summary = new LifeSummary(1);
        foreach (double z in scores)
        {
            summary.Damage.AddLn((sigma * z) + mu - Math.Log(1000));
            summary.Life.AddLn(0);
        }

        // One without damage and two of infinite damage.
        summary.Damage.AddOutside(1, 2);
        summary.Life.AddOutside(2, 1);
        double[] p = [.. scores.Select(StandardNormal.Cumulative), 0, 1, 1];
        double mean = p.Average(), error = Math.Sqrt(p.Sum(x => (x - mean) * (x - mean)) / 6 / 7);
        var curve = new FailureCurve([summary], Model.Scale);

        // Half a bin of 1/1024 in ln damage is 1e-3 of a standard deviation, at most 4e-4 in each probability.
        Assert.Equal(mean, curve.At(1000).Estimate, 4e-4);
        Assert.Equal(error / mean, curve.CoefficientOfVariation(1000), 2e-3);
        Assert.Equal(mean / Math.Exp(1.96 * error / mean), curve.At(1000).Low, 2e-3);

        var exact = new FailureCurve([summary], Model.Scale, isExact: true);
        Assert.Equal((curve.At(1000).Estimate, exact.At(1000).Estimate), (exact.At(1000).High, exact.At(1000).Low));
    }

    [Fact]
    public void The_life_of_a_share_inverts_the_curve()
    {
        var curve = new FailureCurve([OfDamages(1e-6, 400)], Model.Scale);
        foreach (double share in (double[])[0.01, 0.1, 0.5, 0.9])
        {
            double life = curve.Life(share).Estimate;
            Assert.Equal(share, curve.At(life).Estimate, 1e-6);
            Assert.Equal(1, life / Math.Exp(Model.Scale.Mu + (Model.Scale.Sigma * StandardNormal.Quantile(share)) + (6 * Math.Log(10))),
                1e-3);
        }

        Assert.All(new[] { 0, 1, double.NaN }, p => Assert.Equal(double.NaN, curve.Life(p).Estimate));
        var none = new FailureCurve([], Model.Scale);
        Assert.Equal((double.NaN, double.NaN), (none.At(1).Estimate, none.Life(0.1).Estimate));
        Assert.Equal(double.PositiveInfinity, none.CoefficientOfVariation(1));
    }

    [Fact]
    public void Counted_lives_lie_at_their_ranks()
    {
        // e^1, e^2 ... e^100: the median lies between the 50th and 51st, its 95 % interval at the ranks of the binomial, 40 and 61.
        var summary = new LifeSummary(1);
        for (int i = 1; i <= 100; i++)
        {
            summary.Life.AddLn(0.1 * i);
        }

        var curve = new FailureCurve([summary], null);
        RankInterval ranks = OrderStatistics.QuantileInterval(100, 0.5);
        Interval life = curve.Life(0.5);
        Assert.Equal(0.1 * ranks.Lower, Math.Log(life.Low), 1e-3);
        Assert.Equal(0.1 * ranks.Upper, Math.Log(life.High), 1e-3);
        Assert.InRange(Math.Log(life.Estimate), 5 - 1e-3, 5.1 + 1e-3);
        Assert.Equal(0.1 * 10, Math.Log(curve.Life(9 / 99.0).Estimate), 1e-3); // rank 1 + 99 p
    }

    [Fact]
    public void A_part_of_a_bin_counts_in_proportion()
    {
        var life = new LogHistogram();
        life.AddOutside(3, 4);
        life.AddBin(50_000, 8);
        life.AddBin(50_010, 100);
        var counts = new LifeCounts(life);
        long At(double bin) => counts.Below(Math.Exp(((bin - 0.5) / LogHistogram.BinsPerUnit) + LogHistogram.LnCentre(0)));
        Assert.Equal([3, 3, 5, 9, 11, 11, 36, 111, 111], new[]
            { 100, 49_999.99, 50_000.25, 50_000.75, 50_001.001, 50_010, 50_010.25, 50_011.001, 90_000 }
            .Select(At));
    }

    [Theory]
    [InlineData(RiskMethod.Crude, "plain")]
    [InlineData(RiskMethod.Conditional, "plain")]
    [InlineData(RiskMethod.Conditional, "sobol")]
    public void A_study_until_a_coefficient_of_variation_has_reached_it_and_not_long_before(RiskMethod method, string sampling)
    {
        var model = new LifeModel(FiveLegs.Scenario with { RequiredKm = 150_000 });
        Interval Until(double cov, out long n)
        {
            RiskResult result = RiskAnalysis.Run(
                model, new StudySettings(400_000, 4, sampling), new RiskQuestion { UntilCov = cov, Method = method },
                    new RunOptions()).Result;
            n = result.Run.Evaluations;
            return result.AtRequired.Probability;
        }

        Interval p = Until(0.06, out long evaluations);
        if (method == RiskMethod.Crude)
        {
            // 0.06^2 = (1 - p) / (p n); rounds grow by no more than a factor of 4.
            double needed = (1 - p.Estimate) / (p.Estimate * 0.06 * 0.06);
            Assert.InRange(evaluations, needed * 0.999, 4 * needed);
        }
        else
        {
            // 1.96 or, of few replicates, Student's quantile of up to 2.36 on the logarithm's scale.
            Assert.InRange(Math.Log(p.High / p.Low) / 2, 0, 2.4 * 0.06);
        }

        Until(0.03, out long more);
        Assert.True(more >= evaluations);
    }

    private static LifeSummary Counted(int failed, int n)
    {
        var summary = new LifeSummary(1);
        for (int i = 0; i < n; i++)
        {
            summary.Life.AddLn(Math.Log(i < failed ? 10 + (i % 900) : 2000 + i));
        }

        return summary;
    }

    private static LifeSummary OfDamages(double perKm, int n)
    {
        var summary = new LifeSummary(1);
        for (int i = 0; i < n; i++)
        {
            summary.Damage.AddLn(Math.Log(perKm));
            summary.Life.AddLn(0);
        }

        return summary;
    }
}
