using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>The interval of a remedy's ratio by hand: the delete-one jackknife of sixteen groups.</summary>
public sealed class TripRemedyIntervalTests
{
    // Each group: 100 set out; 10 + g fail as planned, 5 + g^2 / 20 with the remedy. Student's t of 15 degrees of freedom: 2.131450.
    [Fact]
    public void The_ratio_has_the_interval_of_the_jackknife()
    {
        const int Groups = 16;
        (double Plan, double With)[] of = [.. Enumerable.Range(0, Groups).Select(g => (10.0 + g, 5 + (g * g / 20.0)))];
        TripSums planned = new(1, Groups), changed = new(1, Groups);
        for (int g = 0; g < Groups; g++)
        {
            for (int row = 0; row < 100; row++)
            {
                planned.Add(g, 1, of[g].Plan / 100);
                changed.Add(g, 1, of[g].With / 100);
            }
        }

        double Ratio(int without) =>
            of.Where((_, g) => g != without).Sum(x => x.With) / of.Where((_, g) => g != without).Sum(x => x.Plan);
        double[] left = [.. Enumerable.Range(0, Groups).Select(Ratio)];
        double mean = left.Average(), error = Math.Sqrt((Groups - 1.0) / Groups * left.Sum(r => (r - mean) * (r - mean)));
        TripRemedy told = TripRemedies.Compare(new Remedy("x", null, []), planned, changed, counted: false);

        // The estimate is that of all but for the jackknife's correction of its bias, a small part of the error.
        Assert.Equal(Ratio(-1), told.Ratio.Estimate, error / 4);
        double spread = Math.Exp(2.131450 * error / told.Ratio.Estimate);
        Assert.Equal(told.Ratio.Estimate * spread, told.Ratio.High, 1e-5);
        Assert.Equal(told.Ratio.Estimate / spread, told.Ratio.Low, 1e-5);
    }
}
