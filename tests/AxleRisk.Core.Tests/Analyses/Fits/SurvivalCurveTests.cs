using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fits;

/// <summary>What the data alone say of survival.</summary>
public class SurvivalCurveTests
{
    // Meeker and Escobar 1998, table C.2; the product limit recomputed.
    [Fact]
    public void The_product_limit_of_the_shock_absorbers_is_right()
    {
        double[] expected = [.973684, .945046, .908698, .870836, .827294, .783752, .718440, .628635, .538830, .431064, .287376];
        ImmutableArray<SurvivalStep> steps = SurvivalCurve.Of(PublishedLives.ShockAbsorbers, 1);
        Assert.Equal(expected.Length, steps.Length);
        Assert.All(steps.Zip(expected), s => Assert.Equal(s.Second, s.First.Survival.Estimate, 6));
        Assert.All(steps, s => Assert.True(s.Survival.Low < s.Survival.Estimate && s.Survival.Estimate < s.Survival.High));
    }

    // Greenwood 1926 of n values without censoring: the variance of ln S is k / (n (n - k)) after k; the bands S^e and S^(1/e), with
    // e = exp(1.96 sd / -ln S) (Kalbfleisch and Prentice 1980).
    [Fact]
    public void The_bands_of_the_product_limit_have_their_closed_form()
    {
        const double N = 20;
        ImmutableArray<SurvivalStep> steps = SurvivalCurve.Of(Enumerable.Range(1, (int)N).Select(i => Observation.At(i)), 1);
        for (int k = 1; k < N; k++)
        {
            double survival = 1 - (k / N), e = Math.Exp(1.959964 * Math.Sqrt(k / (N * (N - k))) / -Math.Log(survival));
            Assert.Equal(survival, steps[k - 1].Survival.Estimate, 1e-9);
            Assert.Equal(Math.Pow(survival, e), steps[k - 1].Survival.Low, 1e-6);
            Assert.Equal(Math.Pow(survival, 1 / e), steps[k - 1].Survival.High, 1e-6);
        }

        Assert.Equal(new Interval(0, 0, 1), steps[^1].Survival);
    }

    // Of known values alone the self-consistent estimate is the empirical one.
    [Fact]
    public void Without_intervals_turnbulls_estimate_is_the_product_limit()
    {
        Observation[] data = [.. PublishedLives.ShockAbsorbers];
        ImmutableArray<SurvivalStep> limit = SurvivalCurve.Of(data, 1);
        ImmutableArray<SurvivalStep> consistent = Turnbull.Of(data, 1);
        Assert.Equal(limit.Select(s => s.At), consistent.Select(s => s.At));
        Assert.All(limit.Zip(consistent), s => Assert.Equal(s.First.Survival.Estimate, s.Second.Survival.Estimate, 6));
    }

    // Finkelstein and Wolfe 1985; the masses as printed in many places, from memory: .0463 .0334 .0887 .0708 .0926 .0818 .1209 .4656.
    [Fact]
    public void Turnbulls_estimate_of_overlapping_intervals_is_the_published()
    {
        double[] masses = [.0463, .0334, .0887, .0708, .0926, .0818, .1209];
        double[] ends = [5, 7, 8, 12, 25, 34, 40];
        ImmutableArray<SurvivalStep> steps = [.. SurvivalCurve.Of(PublishedLives.Intervals, 1).Where(s => s.At < 45)];
        Assert.Equal(ends, steps.Select(s => s.At));
        double before = 1;
        foreach ((SurvivalStep step, double mass) in steps.Zip(masses))
        {
            Assert.Equal(mass, before - step.Survival.Estimate, 4);
            before = step.Survival.Estimate;
        }
    }

    // One free parameter left at a distance: of the exponential-like check the bound is where 2 ln L has fallen by 3.841.
    [Fact]
    public void Likelihood_ratio_bounds_are_where_the_best_likelihood_has_fallen_enough()
    {
        var data = new FitData(PublishedLives.ShockAbsorbers);
        LikelihoodBounds bounds = LikelihoodBounds.Of("weibull", data)!;
        Interval at = bounds.FailedBy(10_000);

        // By brute force over a fine grid of both parameters.
        double low = 1, high = 0;
        for (double shape = 1; shape < 7; shape += 0.05)
        {
            for (double lnScale = 9.8; lnScale < 11.5; lnScale += 0.01)
            {
                var one = new Core.Distributions.Weibull(shape, Math.Exp(lnScale));
                if (bounds.Fit.LogLikelihood - MaximumLikelihood.Log(one, data.Observations) < 1.920729)
                {
                    (low, high) = (Math.Min(low, one.Cumulative(10_000)), Math.Max(high, one.Cumulative(10_000)));
                }
            }
        }

        // The grid's ends lie inside by less than a step.
        Assert.InRange(at.Low, 0.96 * low, low);
        Assert.InRange(at.High, high, 1.01 * high);
        Assert.Equal(bounds.Fit.Distribution.Cumulative(10_000), at.Estimate, 9);
    }
}
