using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>Simulated cases whose causes are known: what is given p % holds in about p % of them.</summary>
public sealed class CalibrationTests
{
    private const int Cases = 500;

    [Fact]
    public void Posterior_probabilities_of_events_hold_as_often_as_they_say()
    {
        double[] b = [1.0, 0.7, 0.4];
        const double S = 0.5, Threshold = 0.8;
        double[][] x = new double[4][];
        for (int i = 0; i < x.Length; i++)
        {
            x[i] = new double[Cases];
            new RandomStream(new StreamKey(7, $"truth/{i}")).FillUnit(0, x[i]);
            StandardNormal.Quantiles(x[i], x[i]);
        }

        var table = new CalibrationTable();
        for (int c = 0; c < Cases; c++)
        {
            double y = (S * x[3][c]) + b.Select((w, i) => w * x[i][c]).Sum();
            var model = new LinearGaussian(b, S, y, Threshold);
            (PosteriorSums sums, _) = PosteriorRunTests.Weigh(model, 3000, (ulong)c + 1, threads: 1);
            for (int e = 0; e < b.Length; e++)
            {
                table.Add(sums.Of(t => t.Patterns.Where((_, p) => (p >> e & 1) == 1).Sum()).Estimate, x[e][c] > Threshold);
            }
        }

        Assert.All(table.Bins.Where(bin => bin.Cases > 0), bin =>
        {
            // Three events of one case are not independent; a bin's frequency has at most the binomial's error of a third of
            // its cases. Four of them and one case of slack.
            double allowed = (4 * Math.Sqrt(bin.MeanStated * (1 - bin.MeanStated) * 3 / bin.Cases)) + (1.0 / bin.Cases);
            Assert.Equal(bin.MeanStated, bin.Frequency, allowed);
        });

        // Over all bins the binomial errors average out: 1500 statements.
        Assert.Equal(table.Bins.Sum(bin => bin.Cases * bin.MeanStated), table.Bins.Sum(bin => bin.Cases * bin.Frequency), 60.0);
        Assert.True(table.Bins.Count(bin => bin.Cases > 20) > 5);
    }
}
