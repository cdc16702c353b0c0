using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>How another sample's figures go with that of the risk study.</summary>
public sealed class RiskHeadlineTests
{
    private static readonly Interval Unknown = new(double.NaN, double.NaN, double.NaN);

    [Fact]
    public void Pairs_scale_the_figure_where_the_sample_saw_what_it_tells_of()
    {
        ComparedCase b = Two(own: 0.11, other: 0.22).With(Headline(0.1)).Cases[1];
        Assert.Equal(0.2, b.Probability.Estimate, 1e-12);
        Assert.Equal(0.1, b.Change!.Difference.Estimate, 1e-12);
    }

    [Fact]
    public void A_sample_that_missed_a_rare_event_by_decades_leaves_the_others_their_own_figures()
    {
        // The sample makes of 1e-14 a 1e-30: times that ratio the other's 2 % would be 2e14.
        ComparedCase b = Two(own: 1e-30, other: 0.02).With(Headline(1e-14)).Cases[1];
        Assert.Equal(0.02, b.Probability.Estimate);
        Assert.Equal(0.02 - 1e-14, b.Change!.Difference.Estimate, 1e-15);
        Assert.Equal(0.02 / 1e-14, b.Change.Ratio.Estimate, 1e-3);
        Assert.InRange(b.Change.Ratio.Estimate, b.Change.Ratio.Low, b.Change.Ratio.High);
    }

    [Fact]
    public void No_probability_is_above_one()
    {
        Interval p = Headline(0.8).Times(new Interval(1.5, 1.2, 1.8));
        Assert.Equal((1, true), (p.Estimate, p.Low <= 1 && p.High == 1 && p.Low > 0.7));
    }

    // Two independent ones: errors of 0.15 and 0.2 together are 0.25, of the probabilities as of their logarithms.
    [Fact]
    public void Errors_of_independent_samples_add_by_their_squares()
    {
        var headline = new RiskHeadline(1_000, new(0.2, 0.2 * Math.Exp(-0.15), 0.2 * Math.Exp(0.15)), RiskMethod.Importance, Run);
        var other = new Interval(0.1, 0.1 * Math.Exp(-0.2), 0.1 * Math.Exp(0.2));
        Interval under = headline.Under(other), times = headline.Times(other);
        Assert.Equal(0.5, under.Estimate, 1e-12);
        Assert.Equal(0.5 * Math.Exp(-0.25), under.Low, 1e-12);
        Assert.Equal(0.5 * Math.Exp(0.25), under.High, 1e-12);
        Assert.Equal(0.02, times.Estimate, 1e-12);
        Assert.Equal(0.02 * Math.Exp(-0.25), times.Low, 1e-12);
        Assert.Equal(0.02 * Math.Exp(0.25), times.High, 1e-12);
        Interval off = (headline with { Probability = new(0.2, 0.17, 0.23) }).Off(new(0.25, 0.21, 0.29));
        Assert.Equal(0.05, off.Estimate, 1e-12);
        Assert.Equal(0, off.Low, 1e-12);
        Assert.Equal(0.1, off.High, 1e-12);
    }

    // Within a factor of two either way.
    [Theory]
    [InlineData(0.101, true)]
    [InlineData(0.099, false)]
    [InlineData(0.399, true)]
    [InlineData(0.401, false)]
    public void Samples_agree_within_a_factor_of_two(double own, bool agrees) => Assert.Equal(agrees, Headline(0.2).Agrees(Around(own)));

    private static RiskHeadline Headline(double p) => new(1_000, Around(p), RiskMethod.Importance, Run);

    private static RunRecord Run { get; } = new(1_000, 1_000, 1, "plain", 1, false);

    private static Interval Around(double p) => new(p, 0.9 * p, 1.1 * p);

    private static ComparisonResult Two(double own, double other) => new()
    {
        DistanceKm = 1_000,
        IsConditional = true,
        Run = Run,
        Cases =
        [
            new ComparedCase(Around(own), Unknown, null),
            new ComparedCase(Around(other), Unknown, new CaseChange(Around(other - own), Around(other / own), Unknown)),
        ],
    };
}
