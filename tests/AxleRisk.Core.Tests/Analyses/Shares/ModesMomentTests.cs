using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Shares;

/// <summary>Two vehicles that share some of their chances.</summary>
public sealed class ModesMomentTests
{
    private static readonly LifeModel Model = new(CertainModes.Scenario);

    // Both above: the indicator of both, whose mean is the probability of both.
    [Fact]
    public void Counted_both_are_above_or_not()
    {
        double[][] joint = Workspace.Columns(1, 3);
        new CountedMoment(2).Fill([[2.5, 1, 2.1, 2]], 0, 1..4, joint);
        Assert.Equal([0, 1, 0], joint[0]);
        new CountedMoment(2).Fill([[1.5, 1, 2.1, 2]], 0, 1..4, joint);
        Assert.Equal([0, 0, 0], joint[0]);
    }

    // Sharing nothing they are independent; sharing all, they survive together as often as the worse of both in every mode.
    [Fact]
    public void Both_fail_as_often_as_independent_ones_or_as_ones_alike()
    {
        Factor[] players = [.. Model.Factors.Factors.Where(f => Model.Chances.ModeOf(f) >= 0).OrderBy(Model.Chances.ModeOf)];
        var moment = new ModesMoment(Model.Chances, [.. players]);
        double[][] rows = [[0, 0, 0], [-0.5, 0.8, -0.5], [0.9, 0.7, 0.9], [0.8, 0.95, 0.8]];
        double[][] joint = Workspace.Columns(1 << players.Length, 2);
        moment.Fill(rows, 0, 1..3, joint);
        double Of(int row) => StandardNormal.Upper(rows[1][row]) * rows[2][row] * rows[3][row];
        for (int other = 1; other < 3; other++)
        {
            Assert.Equal((1 - Of(0)) * (1 - Of(other)), joint[0][other - 1], 1e-6);
            double both = StandardNormal.Upper(Math.Max(rows[1][0], rows[1][other])) * Math.Min(rows[2][0], rows[2][other])
                * Math.Min(rows[3][0], rows[3][other]);
            Assert.Equal(1 - Of(0) - Of(other) + both, joint[^1][other - 1], 1e-6);
        }
    }
}
