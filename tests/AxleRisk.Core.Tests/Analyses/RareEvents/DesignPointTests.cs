using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

public sealed class DesignPointTests
{
    [Fact]
    public void The_steel_beam_has_the_published_design_point()
    {
        // Source: Haldar and Mahadevan 2000 (attribution and beta 4.261 from memory); digits recomputed, 1e-6.
        DesignPoint point = SearchFromOrigin(TestLimits.SteelBeam());
        Assert.Equal(4.26135076, point.Beta, 1e-6);
        Assert.Equal(22.565532, 38 + (3.8 * point.U[0]), 1e-4);
        Assert.Equal(50.519527, 54 + (2.7 * point.U[1]), 1e-4);
        Assert.Equal(-0.95314897, point.Alpha[0], 1e-5);
        Assert.Equal(-0.30250131, point.Alpha[1], 1e-5);
    }

    [Fact]
    public void So_does_the_steel_beam_with_a_lognormal_strength()
    {
        // Same source: beta 5.15078503 (5.151 from memory), point (24.220806, 47.066973).
        var strength = Lognormal.FromMeanAndCov(38, 0.1);
        DesignPoint point = SearchFromOrigin(TestLimits.Of(
            2, u => (strength.Median * Math.Exp(strength.StandardDeviationOfLn * u[0]) * (54 + (2.7 * u[1]))) - 1140));
        Assert.Equal(5.15078503, point.Beta, 1e-6);
        Assert.Equal(24.220806, strength.Median * Math.Exp(strength.StandardDeviationOfLn * point.U[0]), 1e-4);
        Assert.Equal(47.066973, 54 + (2.7 * point.U[1]), 1e-4);
    }

    [Fact]
    public void Lognormal_strength_and_load_have_the_closed_form_index()
    {
        // ln[(mR/mS) sqrt((1 + vS^2) / (1 + vR^2))] / sqrt(sR^2 + sS^2)
        Assert.Equal(3.191868766421, SearchFromOrigin(TestLimits.LognormalDifference()).Beta, 1e-6);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(10)]
    [InlineData(100)]
    public void A_plane_takes_two_steps(int dimension)
    {
        (DesignPoint? point, int evaluations) = DesignPointSearch.From(TestLimits.Linear(5, dimension), new double[dimension]);
        Assert.Equal(5, point!.Beta, 1e-9);
        Assert.All(point.Alpha, a => Assert.Equal(1 / Math.Sqrt(dimension), a, 1e-9));
        Assert.Equal(2 + (2 * 2 * dimension), evaluations); // two values, two gradients
    }

    [Fact]
    public void An_origin_that_fails_has_a_negative_index() =>
        Assert.Equal(-2, SearchFromOrigin(TestLimits.Linear(-2, 3)).Beta, 1e-9);

    [Fact]
    public void A_surface_out_of_reach_gives_no_point() =>
        Assert.Null(DesignPointSearch.From(TestLimits.Linear(38, 2), new double[2]).Point);

    [Fact]
    public void A_surface_is_reached_as_far_as_a_normal_score_keeps_its_digits() =>
        Assert.Equal(36, SearchFromOrigin(TestLimits.Linear(36, 3)).Beta, 1e-9);

    [Theory]
    [InlineData(6, 3)]
    [InlineData(7, 3.5)]
    public void All_four_branches_are_found(double k, double straight)
    {
        DesignPointSet points = Find(TestLimits.FourBranches(k));
        Assert.Equal(4, points.Points.Count);

        // The straight branches lie at k / 2, the curved ones at 3.
        Assert.Equal([3, 3, straight, straight], points.Points.Select(p => Math.Round(p.Beta, 6)));
        Assert.All(points.Points, p => Assert.False(p.IsApproximate));
    }

    [Fact]
    public void A_branch_that_adds_less_than_a_hundredth_is_left_out()
    {
        // Phi(-5) / Phi(-3) = 2e-4
        DesignPointSet points = Find(TestLimits.Of(2, u => Math.Min(3 - u[0], 5 - u[1])));
        Assert.Equal(3, Assert.Single(points.Points).Beta, 1e-6);
    }

    [Fact]
    public void Points_in_nearly_one_direction_are_one()
    {
        var points = new DesignPointSet();
        Assert.True(points.Add(At(4, 0)));
        Assert.False(points.Add(At(3.9, 14)));
        Assert.True(points.Add(At(4, 40)));
        Assert.Equal([3.9, 4], points.Points.Select(p => p.Beta));
    }

    [Fact]
    public void A_failing_sample_out_of_sight_leads_to_its_design_point()
    {
        var finder = new DesignPointFinder(TestLimits.Of(2, u => Math.Min(4 - u[0], 4.5 + u[0])), 1, "test");
        finder.Points.Add(At(4, 0));
        Assert.True(finder.Follow([-5, 1]));
        Assert.Equal(4.5, finder.Points.Points[1].Beta, 1e-6);
    }

    private static DesignPoint At(double beta, double degrees)
    {
        double[] alpha = [Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180)];
        return new DesignPoint(PointVectors.Scaled(alpha, beta), beta, alpha);
    }

    private static DesignPoint SearchFromOrigin(LimitState state) =>
        DesignPointSearch.From(state, new double[state.Dimension]).Point!;

    private static DesignPointSet Find(LimitState state)
    {
        var finder = new DesignPointFinder(state, 1, "test");
        finder.Find(TestContext.Current.CancellationToken);
        return finder.Points;
    }
}
