using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>A trip of a vehicle with a past on other roads: the trip states its own, and each section's rates on them.</summary>
public sealed class SectionsOnTripTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Other_roads_before_change_nothing_of_what_the_trip_uses_up(bool hasSections)
    {
        Scenario scenario = hasSections ? TwoSections.Certain : TripCases.CertainVehicle;
        double[][] without = Used(scenario), with = Used(Histories.From(scenario, 25_000, new Change.Times("use.roughness_factor", 1.4)));
        Assert.Equal(scenario.Legs.Length, without.Length);
        Assert.All(without.Zip(with), legs => Assert.Equal(legs.First, legs.Second));
        Assert.All(without, leg => Assert.All(leg, used => Assert.True(used > 0)));
    }

    // In each mode of a single vehicle, by leg.
    private static double[][] Used(Scenario scenario)
    {
        var whole = new LifeModel(Trip.Whole(TripCases.Usual(scenario, 40_000, 8_000)));
        var model = new TripModel(whole);
        double[][] values = whole.CreateColumns(1);
        foreach (Factor factor in whole.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Nominal[0];
        }

        double[][] used = Workspace.Columns(model.Legs, model.Modes);
        model.Evaluate(values, 1, model.CreateWorkspace(1), used);
        return used;
    }
}
