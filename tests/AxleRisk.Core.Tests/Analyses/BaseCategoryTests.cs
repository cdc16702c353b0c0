using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>The base case of a choice among weld categories: the median, as of every other factor.</summary>
public class BaseCategoryTests
{
    // The median of a discrete distribution: the first value with a cumulated probability of at least a half.
    [Theory]
    [InlineData("F", 0.4, 0.4, 0.2)]
    [InlineData("E", 0.5, 0.25, 0.25)]
    [InlineData("F", 0.25, 0.25, 0.5)]
    [InlineData("F1", 0.3, 0.1, 0.6)]
    public void It_is_the_median(string expected, params double[] weights)
    {
        var model = new LifeModel(With(["E", "F", "F1"], weights));
        BaseCaseResult result = BaseCaseAnalysis.Run(model);
        double certain = BaseCaseAnalysis.Run(new LifeModel(With([expected], [1]))).LifeKm;
        Assert.Equal(certain, result.LifeKm);
        Assert.Equal(certain, result.MedianFactorsLifeKm, 1e-9 * certain);
        Factor factor = model.Factors.Find("detail.category")!;
        Assert.Equal(expected, factor.Show(factor.Nominal[0]));
        Assert.Equal(factor.Distribution!.Median, factor.Nominal[0]);
    }

    private static Scenario With(string[] categories, double[] weights) =>
        FiveLegs.Scenario with { Detail = FiveLegs.Scenario.Detail with { Categories = [.. categories], Weights = [.. weights] } };
}
