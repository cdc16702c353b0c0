using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Decisions;

/// <summary>Costs of two options by hand: two draws in each of the sixteen replicates.</summary>
public sealed class NetCostsTests
{
    // As it is vehicles fail with 0.2 + r / 100 and 0.4 + r / 100 in replicate r; the other option takes 0.05 and 0.25 off and costs 15; a
    // failure costs 100.
    private static readonly double[] AsItIs = [.. Enumerable.Range(0, 32).Select(i => (i % 2 == 0 ? 0.2 : 0.4) + (i / 2 / 100.0))];

    private static readonly double[] Better = [.. AsItIs.Select((p, i) => p - (i % 2 == 0 ? 0.05 : 0.25))];

    private static readonly NetCosts Costs =
        new([0, 15], [new DrawMeans([AsItIs]), new DrawMeans([Better])], [.. Enumerable.Repeat(100.0, 32)]);

    // The mean of r / 100 is 0.075; differences are alike in every replicate, and so in no doubt, whatever the costs themselves.
    [Fact]
    public void Means_and_differences_are_those_by_hand()
    {
        Assert.Equal(37.5, Costs.Expected(0).Estimate, 1e-9);
        Assert.Equal(37.5, Costs.Expected(1).Estimate, 1e-9);
        Assert.Equal(22.5, Costs.Failures(1).Estimate, 1e-9);
        Alike(0, Costs.Difference(1, 0));
        Alike(0, Costs.Difference(0, 1));

        // The standard error of sixteen values 0 to 15 is sqrt(16 * 17 / 12 / 16); Student's t with 15 degrees of freedom 2.131450.
        double half = 2.131450 * Math.Sqrt(17.0 / 12);
        foreach (Interval of in new[] { Costs.Expected(0), Costs.Expected(1), Costs.Failures(0), Costs.Failures(1) })
        {
            Assert.Equal(half, of.High - of.Estimate, 1e-4);
            Assert.Equal(half, of.Estimate - of.Low, 1e-4);
        }
    }

    // The other is better in the second draw of each replicate by 10, worse in the first by 10: knowing which is worth 5.
    [Fact]
    public void The_better_half_and_the_worth_of_knowing_are_those_by_hand()
    {
        Alike(0.5, Costs.ProbabilityBest(0));
        Alike(0.5, Costs.ProbabilityBest(1));
        Alike(5, Costs.PerfectInformation());
        Assert.Equal(1, Costs.BestBeside(0));
        Assert.Equal(0, Costs.BestBeside(1));
        Assert.Equal(20, Costs.Of(0, 0), 1e-9);
        Assert.Equal(15 + 15, Costs.Of(1, 1), 1e-9);
    }

    private static void Alike(double expected, Interval of)
    {
        Assert.Equal(expected, of.Estimate, 1e-9);
        Assert.Equal(expected, of.Low, 1e-9);
        Assert.Equal(expected, of.High, 1e-9);
    }
}
