using AxleRisk.Core.Analyses.Causes;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

public sealed class PriorWeightsTests
{
    /// <summary>Two independent events of 0.1 and 0.4: neither, first, second, both.</summary>
    private static readonly double[] Independent = [0.9 * 0.6, 0.1 * 0.6, 0.9 * 0.4, 0.1 * 0.4];

    [Fact]
    public void Without_stated_priors_nothing_changes() =>
        Assert.Equal([1.0, 1, 1, 1], PriorWeights.Of(Independent, [null, null])!);

    [Fact]
    public void Independent_events_stay_independent_with_the_priors_stated()
    {
        double[] factors = PriorWeights.Of(Independent, [0.3, 0.5])!;
        Assert.Equal(0.3, PriorWeights.Probability(Independent, factors, 1), 1e-9); // solved to 1e-10
        Assert.Equal(0.5, PriorWeights.Probability(Independent, factors, 2), 1e-9);
        Assert.Equal(0.15, PriorWeights.Probability(Independent, factors, 3), 1e-9);
        Assert.Equal(0.35, PriorWeights.Probability(Independent, factors, 0), 1e-9);
    }

    [Fact]
    public void An_event_without_a_stated_prior_is_left_alone_where_it_is_independent()
    {
        double[] factors = PriorWeights.Of(Independent, [0.3, null])!;
        Assert.Equal(0.4, PriorWeights.Probability(Independent, factors, 2), 1e-9);
    }

    [Fact]
    public void Priors_that_cannot_hold_together_are_refused()
    {
        // The second event holds only where the first does.
        Assert.Null(PriorWeights.Of([0.5, 0.3, 0, 0.2], [0.2, 0.4]));

        // Two that exclude each other.
        Assert.Null(PriorWeights.Of([0.5, 0.3, 0.2, 0], [0.6, 0.7]));
    }

    [Fact]
    public void Overlapping_events_meet_their_priors_where_they_can()
    {
        double[] patterns = [0.5, 0.3, 0, 0.2];
        double[] factors = PriorWeights.Of(patterns, [0.6, 0.1])!;
        Assert.Equal(0.6, PriorWeights.Probability(patterns, factors, 1), 1e-9);
        Assert.Equal(0.1, PriorWeights.Probability(patterns, factors, 2), 1e-9);
        Assert.Equal(0.1, PriorWeights.Probability(patterns, factors, 3), 1e-9);
    }
}
