using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

public sealed class LifeModelTests
{
    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    [Fact]
    public void The_benchmark_with_every_factor_at_its_median_lives_486590_km()
    {
        // Source: an independent numpy implementation of the same equations, 486,590 km.
        Assert.Equal(486_590, BaseCaseAnalysis.MedianFactorsLifeKm(Model), 486_590 * 1e-3);
    }

    [Fact]
    public void The_benchmark_has_thirteen_factors()
    {
        Assert.Equal(13, Model.Factors.Factors.Length);
        Assert.Equal(13, Model.Factors.Groups.Length);
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("latin-hypercube")]
    [InlineData("sobol")]
    public void A_life_depends_on_its_sample_number_and_not_on_its_block(string sampling)
    {
        double[] whole = Lives(Model, sampling, [(0, 100)]);
        double[] parts = Lives(Model, sampling, [(0, 1), (1, 7), (8, 41), (49, 51)]);
        Assert.Equal(whole, parts); // bitwise
    }

    [Fact]
    public void The_order_of_the_factors_does_not_matter()
    {
        Scenario reversed = FiveLegs.Scenario with { Inputs = [.. FiveLegs.Scenario.Inputs.Reverse()] };
        Assert.Equal(Lives(Model, "plain", [(0, 50)]), Lives(new LifeModel(reversed), "plain", [(0, 50)])); // bitwise
    }

    [Fact]
    public void A_new_factor_does_not_shift_the_numbers_of_the_others()
    {
        var sure = new LifeModel(FiveLegs.With(Quantities.UnsprungMass, new Value.Certain(90)));
        double[][] with = Values(Model);
        double[][] without = Values(sure);
        int column = Model.Factors.ColumnNames.IndexOf("axle.wall_mm");
        Assert.Equal(with[column], without[sure.Factors.ColumnNames.IndexOf("axle.wall_mm")]);
    }

    [Fact]
    public void A_section_without_wall_has_no_life()
    {
        var model = new LifeModel(FiveLegs.With(Quantities.Wall, new Value.Certain(0)));
        Assert.All(Lives(model, "plain", [(0, 10)]), life => Assert.Equal(0, life));
    }

    private static double[][] Values(LifeModel model)
    {
        double[][] values = model.CreateColumns(20);
        model.Draw(SamplingPlan.FromName("plain", 20), 1, "", 0, 20, model.CreateWorkspace(20), values);
        return values;
    }

    private static double[] Lives(LifeModel model, string sampling, (int First, int Count)[] blocks)
    {
        SamplingPlan plan = SamplingPlan.FromName(sampling, 100);
        var lives = new List<double>();
        foreach ((int first, int count) in blocks)
        {
            Workspace workspace = model.CreateWorkspace(100);
            double[][] values = model.CreateColumns(100);
            model.Draw(plan, 7, "", first, count, workspace, values);
            model.Evaluate(values, count, workspace);
            lives.AddRange(workspace.LifeKm.AsSpan(0, count));
        }

        return [.. lives];
    }
}
