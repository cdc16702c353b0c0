using AxleRisk.App.Charts;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

/// <summary>The picture of the failure probability over distance.</summary>
public sealed class RiskPicturesTests
{
    [Theory]
    [InlineData("warranty-clinic-van", 0.1, "target 10 % by 150,000 km")]
    [InlineData("desert-crossing", 0.02, "target of the trip 2 %")]
    [InlineData("benchmark-five-legs", 0.01, "1 %")]
    public void The_target_is_the_stated_one_and_lies_off_the_axis(string name, double target, string label)
    {
        var model = new LifeModel(ScenarioReader.ReadFile(Cli.Shipped(name)).Scenario);
        ChartLevel level = RiskPictures.TargetOf(model.Scenario);
        Assert.Equal(new ChartLevel(target, label), level);

        var settings = new StudySettings(4096, 1, RiskAnalysis.DefaultSampling(model));
        var question = new RiskQuestion
        {
            PictureKm = [.. Enumerable.Range(-8, 17).Select(i => model.Scenario.RequiredKm * Math.Pow(10, i / 8.0))],
        };
        RiskResult answer = RiskAnalysis.Run(model, settings, question, new RunOptions()).Result;
        string[] rows = [.. RiskPictures.Curve(answer, level, 80, 16).Lines()];
        int axis = Array.FindIndex(rows, r => r.Contains('└', StringComparison.Ordinal));
        int line = Array.FindIndex(rows, r => r.Contains("┄┄┄", StringComparison.Ordinal));
        Assert.InRange(line, 3, axis - 2);
        Assert.Contains(label, rows[line - 1], StringComparison.Ordinal);
    }

    [Fact]
    public void The_curve_of_a_picture_is_that_of_the_table()
    {
        var model = new LifeModel(ScenarioReader.ReadFile(Cli.Shipped("benchmark-five-legs")).Scenario);
        var settings = new StudySettings(4096, 1, RiskAnalysis.DefaultSampling(model));
        (RiskResult result, RiskState state) = RiskAnalysis.Run(model, settings, new RiskQuestion(), new RunOptions());
        double[] distances = [.. result.Distances.Select(d => d.DistanceKm)];
        RiskResult drawn = RiskAnalysis.Summarise(
            model, state, new RiskQuestion { PictureKm = [.. distances] }, new RunOptions(), isPartial: true);
        Assert.Equal(drawn.Distances, drawn.Picture);
        Assert.Equal(drawn.Picture, RiskAnalysis.Curve(model, state, distances, new RunOptions()));
    }
}
