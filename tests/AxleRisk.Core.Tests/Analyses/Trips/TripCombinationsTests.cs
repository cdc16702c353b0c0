using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>The vehicles that a trip's combinations are sought among.</summary>
public sealed class TripCombinationsTests
{
    // With F the lognormal distribution of what can be used up, P = (F(end) - F(start)) / (1 - F(start)) by definition, start and end
    // being what a vehicle has used up by then.
    [Fact]
    public void Every_vehicle_that_sets_out_weighs_what_it_fails_on_the_trip()
    {
        var whole = new LifeModel(Trip.Whole(TripCases.Usual(FiveLegs.Scenario, 150_000, 50_000)));
        var ranges = new RangePlan(whole);
        TripSample sample = TripSample.Draw(
            whole, new TripModel(whole), ranges, new StudySettings(1_024, 1, "sobol"), new RunOptions { Threads = 2 },
            new TripSurvival(whole, false));
        DrawnRows drawn = TripCombinations.Survivors(ranges, sample);
        (TripBlock Block, int Row)[] setOut = [.. sample.Blocks.SelectMany(b => Enumerable.Range(0, b.Rows).Select(row => (b, row)))
            .Where(v => v.b.Start[v.row] < v.b.Limits[v.row])];
        Assert.InRange(setOut.Length, 100, 1_020);
        Assert.Equal(setOut.Length, drawn.Rows.Count);
        double F(double used) => StandardNormal.Cumulative((Math.Log(used) - whole.Scale.Mu) / whole.Scale.Sigma);
        for (int i = 0; i < setOut.Length; i++)
        {
            (TripBlock block, int row) = setOut[i];
            double start = block.Start[row], end = start + block.Legs.Sum(l => l[row]);
            Assert.Equal((F(end) - F(start)) / (1 - F(start)), drawn.Rows.Weights[0][i], 1e-9);
            Assert.Equal(block.Group[row], drawn.Rows.Group[i]);
            for (int r = 0; r < drawn.Bits.Length; r++)
            {
                Assert.Equal(block.Bits[r][row >> 6] >> (row & 63) & 1, drawn.Bits[r][i >> 6] >> (i & 63) & 1);
            }
        }
    }
}
