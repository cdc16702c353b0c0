using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>A curve of lives between its nodes, against the distribution whose values stand at the nodes.</summary>
public sealed class LifeCurveTests
{
    // Of a Weibull life ln hazard is straight over ln distance, so that the cubic is exact.
    [Theory]
    [InlineData(10_000)]
    [InlineData(14_000)]
    [InlineData(40_000)]
    [InlineData(90_000)]
    [InlineData(155_000)]
    public void Between_the_nodes_of_a_weibull_it_is_exact(double km)
    {
        (double failed, double whole, double density) = Of(new Weibull(2.3, 100_000, 0)).At(km);
        double hazard = Math.Pow(km / 100_000, 2.3);
        Assert.Equal(-Math.Log(1 - failed), hazard, 1e-9 * hazard);
        Assert.Equal(Math.Exp(-hazard), whole, 1e-9);
        Assert.Equal(2.3 * hazard / km * Math.Exp(-hazard), density, 1e-12);
        Assert.Equal(hazard, Of(new Weibull(2.3, 100_000, 0)).HazardAt(km), 1e-9 * hazard);
    }

    // Nodes a factor of 1.7 apart: a cubic in between.
    [Theory]
    [InlineData(12_000)]
    [InlineData(60_000)]
    [InlineData(150_000)]
    [InlineData(180_000)]
    public void Between_the_nodes_of_a_lognormal_it_is_near(double km)
    {
        var life = new Lognormal(100_000, 0.6);
        (double failed, double whole, double density) = Of(life).At(km);
        Assert.Equal(life.Cumulative(km), failed, 2e-3 * life.Cumulative(km));
        Assert.Equal(life.Upper(km), whole, 2e-3);
        Assert.Equal(life.Density(km), density, 1e-2 * life.Density(km));
    }

    [Fact]
    public void Nothing_fails_by_0_and_a_cleared_curve_is_made_anew()
    {
        LifeCurve curve = Of(new Lognormal(100_000, 0.6));
        Assert.Equal((0, 1, 0), curve.At(0));
        double before = curve.At(60_000).Failed;
        curve.Clear();
        Fill(curve, new Lognormal(80_000, 0.6));
        Assert.True(curve.At(60_000).Failed > before + 0.05);
    }

    private static LifeCurve Of(Distribution life)
    {
        var curve = new LifeCurve([.. Enumerable.Range(0, 7).Select(i => 8_000 * Math.Pow(1.7, i))]);
        Fill(curve, life);
        return curve;
    }

    private static void Fill(LifeCurve curve, Distribution life)
    {
        for (int k = 0; k < curve.Nodes.Length; k++)
        {
            double km = curve.Nodes[k];
            (curve.Failed[k], curve.Whole[k], curve.Density[k]) = (life.Cumulative(km), life.Upper(km), life.Density(km));
        }
    }
}
