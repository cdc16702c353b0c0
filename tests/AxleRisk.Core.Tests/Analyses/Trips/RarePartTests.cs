using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>Sums and ratios of independent probabilities with their errors, by hand.</summary>
public sealed class RarePartTests
{
    // Two-sided 95 % of the standard normal distribution. Source: R, qnorm(0.975).
    private const double Z = 1.959963984540054;

    private static readonly RarePart First = new(3e-6, 0.2, 0), Second = new(1e-6, 0.3, 2e-8);

    [Fact]
    public void An_answer_with_failures_keeps_what_its_interval_has_beyond_its_error()
    {
        double own = 1e-6 * Math.Exp(Z * 0.1);
        Assert.Equal(new RarePart(1e-6, 0.1, 0), RarePart.Of(Answer(new(1e-6, 9e-7, own), 0.1, found: true)));
        Assert.Equal(0, RarePart.Of(Answer(new(1e-6, 9e-7, 0.99 * own), 0.1, found: true)).Unresolved);
        RarePart more = RarePart.Of(Answer(new(1e-6, 9e-7, own + 5e-7), 0.1, found: true));
        Assert.Equal((1e-6, 0.1), (more.P, more.Cov));
        Assert.Equal(5e-7, more.Unresolved, 1e-18);
        Assert.Equal(new RarePart(0, 0, 1e-12), RarePart.Of(Answer(new(0, 0, 1e-12), double.NaN, found: false)));
    }

    [Fact]
    public void An_interval_has_the_error_of_its_width_on_the_logarithms_scale()
    {
        Assert.Equal(0.25, RarePart.Of(new Interval(0.01, 0.01 * Math.Exp(-Z * 0.25), 0.01 * Math.Exp(Z * 0.25))).Cov, 1e-12);
        Assert.Equal(new RarePart(0, 0, 0), RarePart.Of(new Interval(0, 0, 1e-3)));
    }

    // Variances of independent numbers add: (3e-6 * 0.2)^2 + (1e-6 * 0.3)^2 = 4.5e-13, over the sum of 4e-6.
    [Fact]
    public void Of_a_sum_the_variances_add()
    {
        RarePart sum = RarePart.Sum([First, null, Second]);
        Assert.Equal(4e-6, sum.P, 1e-20);
        Assert.Equal(Math.Sqrt(4.5e-13) / 4e-6, sum.Cov, 1e-14);
        Assert.Equal(2e-8, sum.Unresolved, 1e-22);
        Assert.Equal(5e-8, RarePart.Sum([Second, new RarePart(0, 0, 3e-8)]).Unresolved, 1e-22);
        Assert.Equal(First with { Cov = sum.Cov, P = sum.P }, sum with { Unresolved = 0 });
        Assert.Equal(new RarePart(0, 0, 7), RarePart.Sum([new(0, 0, 4), new(0, 0, 3)]));
        Assert.Equal(default, RarePart.Sum([]));
    }

    [Fact]
    public void A_ratio_has_the_errors_of_both_and_is_no_more_than_one()
    {
        Interval ratio = Second.Over(new RarePart(1e-5, 0.4, 0));
        Assert.Equal(0.1, ratio.Estimate, 1e-15);
        Assert.Equal(0.1 * Math.Exp(-Z * 0.5), ratio.Low, 1e-14); // 0.3 and 0.4 make 0.5
        Assert.Equal((0.1 * Math.Exp(Z * 0.5)) + 2e-3, ratio.High, 1e-14);
        Assert.Equal(1, Second.Over(new RarePart(1.1e-6, 0.4, 0)).High);
        Assert.Equal(new Interval(double.NaN, 0, 0.25), new RarePart(0, 0, 0.125).Over(new RarePart(0.5, 0, 0)));
    }

    // The share x / (x + y) of independent x and y has to first order the variance
    // s^2 ((1 - s)^2 cov_x^2 + (1 - s)^2 cov_y^2), s the share; here s = 1/4.
    [Fact]
    public void A_share_has_the_error_of_the_quotient_of_a_part_and_the_whole()
    {
        Interval share = Second.ShareOf(RarePart.Sum([First, Second]));
        double half = Z * 0.25 * 0.75 * Math.Sqrt((0.2 * 0.2) + (0.3 * 0.3));
        Assert.Equal(0.25, share.Estimate, 1e-15);
        Assert.Equal(0.25 - half, share.Low, 1e-12);
        Assert.Equal(0.25 + half + (2e-8 / 4e-6), share.High, 1e-12);
        Assert.Equal(new Interval(1, 1, 1), First.ShareOf(RarePart.Sum([First])));
        Assert.Equal(new Interval(0, 0, 0), default(RarePart).ShareOf(First));
        Assert.Equal(double.NaN, First.ShareOf(default).Estimate);
    }

    private static RareEventResult Answer(Interval probability, double cov, bool found) => new()
    {
        DistanceKm = 1,
        Probability = probability,
        Cov = cov,
        FailureFound = found,
        Method = "",
        MethodReason = "",
        Doubt = null,
        States = [],
        EffectiveSize = 1,
        LargestShare = 1,
        SearchEvaluations = 1,
        SamplingEvaluations = 1,
        CrossCheck = null,
        Run = new RunRecord(1, 1, 1, "", 1, false),
    };
}
