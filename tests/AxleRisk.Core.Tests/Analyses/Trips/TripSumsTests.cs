using AxleRisk.Core.Analyses.Trips;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>Ratios of sums over vehicles, by hand.</summary>
public sealed class TripSumsTests
{
    // Of 0.9 + 0.45 vehicles that set out 0.1 + 0.05 fail on the first leg and 0.05 + 0.025 on the last.
    [Fact]
    public void Sums_of_groups_make_the_probabilities_of_trip_and_legs()
    {
        var sums = new TripSums(2, 2);
        double[][] of = [[0.9, 0.1, 0.05], [0.45, 0.05, 0.025]];
        for (int g = 0; g < of.Length; g++)
        {
            of[g].CopyTo(sums.OfGroups[g], 0);
        }

        Assert.Equal(0.15 / 0.9, sums.Drawn, 1e-12);
        Assert.Equal(0.15, TripSums.Failed(of[0]), 1e-12);
        Assert.Equal(0.05, TripSums.Failed(of[0], 1, 2), 1e-12);
        Assert.Equal(0.15 / 0.9, sums.Trip(counted: false).Estimate, 1e-12);
        Assert.Equal(0.1 / 0.9, sums.Cumulative(1, counted: false).Estimate, 1e-12);
        Assert.Equal(0.05 / 0.8, sums.Conditional(1, counted: false).Estimate, 1e-12);
        Assert.Equal(1.0 / 3, sums.Share(1).Estimate, 1e-12);
        Assert.Equal(1.35 / 2, sums.Reached(2).Estimate, 1e-12);
    }
}
