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
