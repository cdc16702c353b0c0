using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

public sealed class PairedDrawTests
{
    private const int RowsOfGroup = 256;

    // Two samples of one dimension of a Sobol' sequence, each scrambled by itself, fall into the same two of the four quadrants;
    // two dimensions of one sequence fill all four alike (Sobol' 1967: both projections and the pair are nets).
    [Fact]
    public void Pairs_in_a_sobol_plan_fill_the_quadrants_of_each_factor_alike()
    {
        var model = new LifeModel(FiveLegs.Scenario);
        var draw = new PairedDraw(model, new StudySettings(1, 1, "sobol"), PairedDraw.Groups * RowsOfGroup);
        (double[][] groups, long rows, bool isPartial) = draw.Run(
            new RunOptions { Threads = 2 },
            () => (Space: model.CreateWorkspace(draw.BlockSize), A: model.CreateColumns(draw.BlockSize),
                B: model.CreateColumns(draw.BlockSize)),
            (w, first, count) =>
            {
                draw.Draw(first, count, w.Space, w.A, w.B);
                return [.. w.A.Zip(w.B, (a, b) => Quadrants(a, b, count)).SelectMany(q => q)];
            });
        Assert.Equal((PairedDraw.Groups * RowsOfGroup, false), (rows, isPartial));
        Assert.Equal(PairedDraw.Groups, groups.Length);
        Assert.All(groups, g => Assert.All(g, n => Assert.Equal(RowsOfGroup / 4.0, n)));
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("latin-hypercube")]
    [InlineData("sobol")]
    public void Groups_and_the_two_samples_have_numbers_of_their_own(string sampling)
    {
        var model = new LifeModel(FiveLegs.Scenario);
        var draw = new PairedDraw(model, new StudySettings(1, 1, sampling), 64);
        (double[][] groups, _, _) = draw.Run(
            new RunOptions { Threads = 1 },
            () => (Space: model.CreateWorkspace(draw.BlockSize), A: model.CreateColumns(draw.BlockSize),
                B: model.CreateColumns(draw.BlockSize)),
            (w, first, count) =>
            {
                draw.Draw(first, count, w.Space, w.A, w.B);
                return [w.A[0][0], w.B[0][0], w.A[0][1], w.B[0][1]];
            });
        Assert.Equal(4 * PairedDraw.Groups, groups.SelectMany(g => g).Distinct().Count());
    }

    private static double[] Quadrants(double[] a, double[] b, int count)
    {
        double middleA = Median(a, count), middleB = Median(b, count);
        var quadrants = new double[4];
        for (int i = 0; i < count; i++)
        {
            quadrants[(a[i] > middleA ? 2 : 0) + (b[i] > middleB ? 1 : 0)]++;
        }

        return quadrants;
    }

    /// <summary>Between the two middle values.</summary>
    private static double Median(double[] values, int count)
    {
        double[] sorted = [.. values.Take(count).Order()];
        return (sorted[(count / 2) - 1] + sorted[count / 2]) / 2;
    }
}
